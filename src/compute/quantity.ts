/** How people write values, and SI numbers: reading, writing, preferred values. */
export { parseQuantity } from './quantity/parse.ts';
export type { ParseOptions, ParsedQuantity, RefusedQuantity } from './quantity/parse.ts';
export { formatQuantity } from './quantity/format.ts';
export type { FormatOptions } from './quantity/format.ts';
export { nearestPreferred, nextPreferredDown, nextPreferredUp, preferredValues } from './quantity/series.ts';
export type { PreferredOptions, PreferredSeries } from './quantity/series.ts';
export { UNITS } from './quantity/units.ts';
export type { Unit, UnitFact } from './quantity/units.ts';
