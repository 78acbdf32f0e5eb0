import type { ReadPlan } from '../../src/workbook/plans/plan-record.ts';

/** A small stand-in for a supply plan: the workbook keeps whatever its reader reads. */
export interface SamplePlan {
  readonly version: 1;
  readonly mainsVolts: number;
  readonly loads: readonly { readonly name: string; readonly amps: number }[];
}

export const samplePlan = (mainsVolts = 120, loads = 2): SamplePlan => ({
  version: 1,
  mainsVolts,
  loads: Array.from({ length: loads }, (_, index) => ({ name: `relay ${index + 1}`, amps: 0.04 })),
});

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null && !Array.isArray(value);

/** Reads a `SamplePlan` with the same manners as the real reader: fresh object, problems with paths, unknown keys told. */
export const readSamplePlan: ReadPlan<SamplePlan> = (value) => {
  const problem = (path: string, message: string) => ({ ok: false as const, problems: [{ path, message }] });
  if (!isRecord(value)) return problem('', 'an object is expected');
  if (value['version'] !== 1) return problem('version', 'version 1 is expected');
  const { mainsVolts, loads } = value;
  if (typeof mainsVolts !== 'number' || !(mainsVolts >= 50 && mainsVolts <= 300)) return problem('mainsVolts', 'a number from 50 to 300 is expected');
  if (!Array.isArray(loads) || loads.length > 60) return problem('loads', 'a list of at most 60 entries is expected');
  const read: { name: string; amps: number }[] = [];
  for (const [index, load] of loads.entries()) {
    if (!isRecord(load) || typeof load['name'] !== 'string' || load['name'].length > 80) return problem(`loads.${index}.name`, 'text is expected');
    if (typeof load['amps'] !== 'number' || !(load['amps'] >= 0 && load['amps'] <= 30)) return problem(`loads.${index}.amps`, 'a number from 0 to 30 is expected');
    read.push({ name: load['name'], amps: load['amps'] });
  }
  const dropped = Object.keys(value).filter((key) => !['version', 'mainsVolts', 'loads'].includes(key));
  return { ok: true, plan: { version: 1, mainsVolts, loads: read }, dropped };
};
