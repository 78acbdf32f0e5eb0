import { diodePart } from '../../compute/parts/diode.ts';
import { coilHenries, relayOfKind } from '../../compute/parts/relay.ts';
import { wire } from '../../compute/parts/wire.ts';
import { chainDiode, chainReservoir } from '../../compute/supplies/chain-parts.ts';
import { operatingCorners } from '../../compute/supplies/corners.ts';
import type { BenchFeed, BenchJob } from '../../compute/tolerance/bench-job.ts';
import { READ_POINTS } from './fields.ts';
import type { Readings, TestPoint } from '../../compute/tolerance/test-points.ts';
import type { ValuesOf } from '../shared/definition.ts';
import { stageOf } from '../shared/stage-fields.ts';
import { mainsOf, windingOf } from '../shared/supply-fields.ts';
import type { fields } from './fields.ts';

export type Values = ValuesOf<typeof fields>;

/** Mains that was watched during the readings, and mains that nobody read. */
const WATCHED = 0.01;
const LOAD_TOLERANCE = 0.1;
const CONVERTER_TOLERANCE = 0.02;
const GROUND_WIRE = 'awg-20';

function feedOf(values: Values): BenchFeed {
  const { topology, farads, airCelsius, heatsink, loadAmps } = values;
  const cooled = heatsink === undefined ? {} : { heatsinkKelvinPerWatt: heatsink };
  if (values.feed === 'converter') {
    return { kind: 'converter', outputVolts: values.converterVolts, outputToleranceRatio: CONVERTER_TOLERANCE, limitAmps: values.converterAmps, stage: stageOf(values), ...cooled };
  }
  const mains = mainsOf(values);
  // Refuses mains that no corner can be made of, before anything is drawn.
  operatingCorners(mains);
  return {
    kind: 'winding',
    chain: {
      mains,
      winding: windingOf(values),
      topology,
      diode: chainDiode(diodePart(values.diode)),
      reservoir: chainReservoir({ farads, ratedVolts: 50, topology, hertz: mains.hertz, airCelsius }),
      stage: stageOf(values),
      load: { offAmps: 0, runningAmps: loadAmps, everythingAmps: loadAmps },
      cooling: { airCelsius, ...cooled },
    },
  };
}

/** The fields as a built supply on the bench. */
export function jobOf(values: Values): BenchJob {
  const { mainsVolts, mainsRead, mainsSpread, coilKind, coilVolts, zenerVolts, groundMetres } = values;
  const coil = coilKind === 'none' ? undefined : relayOfKind({ kind: coilKind, ratedVolts: coilVolts });
  return {
    feed: feedOf(values),
    mains: { nominalVolts: mainsVolts, volts: mainsRead ?? mainsVolts, spreadRatio: mainsRead === undefined ? mainsSpread : WATCHED, hertz: Number(values.mainsHertz) },
    load: { amps: values.loadAmps, toleranceRatio: LOAD_TOLERANCE },
    airCelsius: values.airCelsius,
    ...(coil === undefined ? {} : { coil: { henries: coilHenries(coil).operated, ohms: coil.ohms, suppression: zenerVolts === undefined ? { kind: 'diode' as const } : { kind: 'diode-zener' as const, volts: zenerVolts } } }),
    ...(groundMetres === undefined ? {} : { groundWire: { row: wire(GROUND_WIRE), metres: groundMetres } }),
  };
}

/** Points that the instruments at hand can read. */
export function readable({ meter, scope }: Pick<Values, 'meter' | 'scope'>): readonly TestPoint[] {
  return READ_POINTS.filter(({ instrument, id }) => {
    if (instrument === 'scope') return scope === 'yes';
    if (instrument === 'averaging-ac') return meter === 'averaging';
    if (instrument === 'true-rms-ac') return meter === 'true-rms' || id === 'winding-open';
    return true;
  });
}

/** What has been read, of the points that can be. */
export function measuredOf(values: Values): Readings {
  const read = readable(values).flatMap(({ id }) => {
    const value = id === 'mains' ? undefined : values[id];
    return value === undefined ? [] : [[id, value] as const];
  });
  return Object.fromEntries([...(values.mainsRead === undefined ? [] : [['mains', values.mainsRead] as const]), ...read]);
}
