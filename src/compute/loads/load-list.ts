import { InputError, requireNumber } from '../errors.ts';
import type { Basis, Finding, Source } from '../findings.ts';
import { formatQuantity } from '../quantity.ts';
import { workingStep } from '../supplies/working.ts';
import type { WorkingStep } from '../supplies/working.ts';
import { loadFindings } from './load-findings.ts';
import { pieceAmps } from './item-amps.ts';
import type { PieceAmps } from './item-amps.ts';
import type { AmpsSpread, LoadItem, LoadNature, LoadRail } from './load-types.ts';

/** Share added to the most that the list can draw, and why. */
export const LOAD_MARGIN = 0.2;
export const LOAD_MARGIN_REASON =
  'A fifth more than the worst sum: the next relay that is asked for, a lamp that turns out too dim, and figures here that are typical. It costs little now and a transformer later.';

export interface LoadLine {
  readonly name: string;
  readonly kind: LoadItem['kind'];
  readonly count: number;
  readonly onAtOnce: number;
  readonly when: 'always' | 'switched';
  readonly nature: LoadNature;
  readonly each: AmpsSpread;
  /** With as many on as normal use has. */
  readonly running: AmpsSpread;
  /** With all of them on. */
  readonly everything: AmpsSpread;
  /** Most at switch-on with all of them on and cold. */
  readonly coldAmps: number;
  readonly working: WorkingStep;
  /** What the figures of this line rest on. */
  readonly basis: Basis;
  readonly source: Source;
}

export interface LoadSums {
  readonly lines: readonly LoadLine[];
  /** Nothing switched on: only what is always on. */
  readonly idle: AmpsSpread;
  readonly running: AmpsSpread;
  readonly everything: AmpsSpread;
  /** First instant: what is always on, cold; and everything on, cold. */
  readonly switchOn: { readonly alwaysAmps: number; readonly everythingAmps: number };
  /** Current to design for: most with everything on, and the margin. */
  readonly design: { readonly amps: number; readonly marginRatio: number; readonly reason: string };
  /** Everything on as one resistor at the nominal rail; infinite for an empty load. */
  readonly equivalentOhms: number;
  /** Typical amps with everything on that follow the rail, that do not, and that rise as it falls. Behind a linear regulator all of it is constant current. */
  readonly natureAmps: { readonly resistive: number; readonly constantCurrent: number; readonly constantPower: number };
  readonly findings: readonly Finding[];
}

const scaled = ({ min, typical, max }: AmpsSpread, by: number): AmpsSpread => ({ min: min * by, typical: typical * by, max: max * by });
const total = (spreads: readonly AmpsSpread[]): AmpsSpread =>
  spreads.reduce((sum, each) => ({ min: sum.min + each.min, typical: sum.typical + each.typical, max: sum.max + each.max }), { min: 0, typical: 0, max: 0 });

const whenOf = (item: LoadItem): 'always' | 'switched' => item.when ?? (item.kind === 'relay' || item.kind === 'optocoupler' ? 'switched' : 'always');

function workingOf(item: LoadItem, piece: PieceAmps): WorkingStep {
  const each = workingStep({
    name: `load-${item.kind}`,
    words: `${item.name}: ${item.count} of them, at the nominal rail.`,
    formula: piece.formula,
    numbers: piece.numbers,
    result: { symbol: 'I', value: piece.typical, unit: 'A' },
    source: piece.source,
  });
  if (item.count === 1) return each;
  const sum = piece.typical * item.count;
  return { ...each, substituted: `${each.substituted}; ${item.count} × ${formatQuantity({ value: piece.typical, unit: 'A' })} = ${formatQuantity({ value: sum, unit: 'A' })}` };
}

function lineOf(item: LoadItem, rail: LoadRail, airCelsius: number): LoadLine {
  for (const [name, value, min] of [['count', item.count, 1], ['onAtOnce', item.onAtOnce ?? item.count, 0]] as const) {
    if (!Number.isInteger(value)) throw new InputError(name, value, { expected: 'a whole number' });
    requireNumber(name, value, { min, max: name === 'count' ? 100 : item.count });
  }
  const piece = pieceAmps(item, rail, airCelsius);
  const onAtOnce = item.onAtOnce ?? item.count;
  const each = { min: piece.min, typical: piece.typical, max: piece.max };
  return {
    name: item.name, kind: item.kind, count: item.count, onAtOnce, when: whenOf(item), nature: piece.nature, each, running: scaled(each, onAtOnce),
    everything: scaled(each, item.count), coldAmps: piece.coldAmps * item.count, working: workingOf(item, piece), basis: piece.basis, source: piece.source,
  };
}

/**
 * Adds up what a rail must feed: running, with everything on, and at switch-on with heaters cold; each line with its
 * least, typical and most, its working, and findings for coils and heaters at the ends of the rail.
 *
 * `railVolts` nominal; `railMinVolts` and `railMaxVolts` what the rail holds at worst (default 5 % either way, what a
 * fixed regulator holds). `airCelsius` the air about the relays (default 55). Sums take the extremes of all parts at
 * once. Up to 50 items; an empty list draws nothing and finds nothing. Throws `InputError` for values out of range.
 */
export function addLoads(options: {
  readonly items: readonly LoadItem[];
  readonly railVolts: number;
  readonly railMinVolts?: number;
  readonly railMaxVolts?: number;
  readonly airCelsius?: number;
  readonly marginRatio?: number;
}): LoadSums {
  const { items } = options;
  const volts = requireNumber('railVolts', options.railVolts, { min: 1, max: 100 });
  const rail: LoadRail = {
    volts,
    minVolts: requireNumber('railMinVolts', options.railMinVolts ?? 0.95 * volts, { min: 0.5, max: volts }),
    maxVolts: requireNumber('railMaxVolts', options.railMaxVolts ?? 1.05 * volts, { min: volts, max: 200 }),
  };
  const airCelsius = requireNumber('airCelsius', options.airCelsius ?? 55, { min: -20, max: 110 });
  const marginRatio = requireNumber('marginRatio', options.marginRatio ?? LOAD_MARGIN, { min: 0, max: 5 });
  if (items.length > 50) throw new InputError('items', items.length, { max: 50 });

  const lines = items.map((item) => lineOf(item, rail, airCelsius));
  const always = lines.filter((line) => line.when === 'always');
  const everything = total(lines.map((line) => line.everything));
  const typicalOf = (natures: readonly LoadNature[]): number => total(lines.filter((line) => natures.includes(line.nature)).map((line) => line.everything)).typical;
  return {
    lines,
    idle: total(always.map((line) => line.everything)),
    running: total(lines.map((line) => line.running)),
    everything,
    switchOn: { alwaysAmps: always.reduce((sum, line) => sum + line.coldAmps, 0), everythingAmps: lines.reduce((sum, line) => sum + line.coldAmps, 0) },
    design: { amps: everything.max * (1 + marginRatio), marginRatio, reason: LOAD_MARGIN_REASON },
    equivalentOhms: everything.typical === 0 ? Infinity : volts / everything.typical,
    natureAmps: { resistive: typicalOf(['resistive', 'behind a diode drop', 'heater']), constantCurrent: typicalOf(['constant current']), constantPower: typicalOf(['constant power']) },
    findings: items.flatMap((item) => loadFindings(item, rail, airCelsius)),
  };
}
