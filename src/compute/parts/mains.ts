import { InputError, requireNumber } from '../errors.ts';
import type { CatalogueRow } from './row.ts';

/** Peak over RMS of the mains, per operating corner. Low mains is flat-topped where many rectifiers share it. */
export const MAINS_CREST = { low: 1.35, nominal: 1.4, high: Math.SQRT2 } as const;

/** Design spread about nominal where nothing better is known: a tenth either way. */
export const MAINS_SPREAD = 0.1;

export interface MainsRegion extends CatalogueRow {
  readonly nominalVolts: number;
  readonly hertz: 50 | 60;
  /** What the supplier undertakes, volts RMS. */
  readonly supplied: { readonly minVolts: number; readonly maxVolts: number };
  /** What to design for: at least a tenth either way. */
  readonly lowVolts: number;
  readonly highVolts: number;
}

const region = (row: Omit<MainsRegion, 'lowVolts' | 'highVolts'>): MainsRegion => ({
  ...row,
  lowVolts: Math.min(row.supplied.minVolts, Math.round(row.nominalVolts * (1 - MAINS_SPREAD) * 10) / 10),
  highVolts: Math.max(row.supplied.maxVolts, Math.round(row.nominalVolts * (1 + MAINS_SPREAD) * 10) / 10),
});

export const MAINS_REGIONS: readonly MainsRegion[] = [
  region({ id: 'eu-230', name: 'European Union, 230 V 50 Hz', nominalVolts: 230, hertz: 50, supplied: { minVolts: 207, maxVolts: 253 }, basis: 'rated', source: { id: 'en-50160' } }),
  region({ id: 'uk-230', name: 'United Kingdom, 230 V 50 Hz', nominalVolts: 230, hertz: 50, supplied: { minVolts: 216.2, maxVolts: 253 }, basis: 'typical', source: { id: 'uk-supply-regulations' }, note: 'Supplied +10/−6 %; equipment is to take ±10 %.' }),
  region({ id: 'au-nz-230', name: 'Australia and New Zealand, 230 V 50 Hz', nominalVolts: 230, hertz: 50, supplied: { minVolts: 216.2, maxVolts: 253 }, basis: 'typical', source: { id: 'as-60038' }, note: 'Supplied +10/−6 %; equipment is to take ±10 %.' }),
  region({ id: 'us-120', name: 'United States and Canada, 120 V 60 Hz', nominalVolts: 120, hertz: 60, supplied: { minVolts: 114, maxVolts: 126 }, basis: 'rated', source: { id: 'ansi-c84-1', at: 'range A, service' }, note: 'The rarer range B reaches 104 to 127 V at the outlet.' }),
  region({ id: 'jp-100-50', name: 'Japan, east, 100 V 50 Hz', nominalVolts: 100, hertz: 50, supplied: { minVolts: 95, maxVolts: 107 }, basis: 'typical', source: { id: 'jp-supply-rules' } }),
  region({ id: 'jp-100-60', name: 'Japan, west, 100 V 60 Hz', nominalVolts: 100, hertz: 60, supplied: { minVolts: 95, maxVolts: 107 }, basis: 'typical', source: { id: 'jp-supply-rules' } }),
  region({ id: 'legacy-240', name: 'Amp marked 240 V, 50 Hz', nominalVolts: 240, hertz: 50, supplied: { minVolts: 225.6, maxVolts: 254.4 }, basis: 'typical', source: { id: 'uk-supply-regulations' }, note: 'The old 240 V ±6 %. On a 230 V supply its windings read 4 % low.' }),
];

/** The row with this id. Throws `InputError` when there is none. */
export function mainsRegion(id: string): MainsRegion {
  const found = MAINS_REGIONS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('mains', id, { expected: MAINS_REGIONS.map((row) => row.id).join(', ') });
  return found;
}

/** One operating corner of the mains. */
export interface MainsCorner {
  readonly corner: 'low' | 'nominal' | 'high';
  readonly volts: number;
  /** Volts over nominal. */
  readonly ratio: number;
  readonly hertz: number;
  /** Peak over RMS. */
  readonly crestFactor: number;
}

/**
 * Low, nominal and high mains with their crest factors: 1.35, 1.4 and √2. Limits default to a tenth either way of
 * nominal. Throws `InputError` unless 50 ≤ nominal ≤ 500 V, 40 ≤ hertz ≤ 70 and low ≤ nominal ≤ high, each within
 * a factor of two of nominal. Crest factors typical: 1.35 to 1.40 is common on loaded mains.
 */
export function mainsCorners(options: {
  readonly nominalVolts: number;
  readonly hertz: number;
  readonly lowVolts?: number;
  readonly highVolts?: number;
}): { readonly low: MainsCorner; readonly nominal: MainsCorner; readonly high: MainsCorner } {
  const nominal = requireNumber('nominalVolts', options.nominalVolts, { min: 50, max: 500 });
  const hertz = requireNumber('hertz', options.hertz, { min: 40, max: 70 });
  const lowVolts = requireNumber('lowVolts', options.lowVolts ?? nominal * (1 - MAINS_SPREAD), { min: nominal / 2, max: nominal });
  const highVolts = requireNumber('highVolts', options.highVolts ?? nominal * (1 + MAINS_SPREAD), { min: nominal, max: nominal * 2 });
  const at = (corner: MainsCorner['corner'], volts: number): MainsCorner => ({ corner, volts, ratio: volts / nominal, hertz, crestFactor: MAINS_CREST[corner] });
  return { low: at('low', lowVolts), nominal: at('nominal', nominal), high: at('high', highVolts) };
}
