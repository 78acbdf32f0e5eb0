import { InputError } from '../../compute/errors.ts';
import { worstLevel, type Finding } from '../../compute/findings.ts';
import { addLoads, type LoadSums } from '../../compute/loads/load-list.ts';
import type { LoadItem } from '../../compute/loads/load-types.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import { coilCheckFace } from '../coil-check/fields.ts';
import { rectify } from '../rectify/state.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type FieldSet, type ValuesOf, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import { showMarked, showQuantity } from '../shared/units.ts';
import { windingPickFace } from '../winding-pick/fields.ts';

export const fields = {
  railVolts: { kind: 'quantity', label: 'Rail', unit: 'V', default: 12, min: 3, max: 60, stepping: 1 },
  railSpread: { kind: 'quantity', label: 'Rail, give or take', unit: '%', default: 0.05, min: 0, max: 0.4, stepping: 0.01, hint: 'a fixed regulator holds 5 %' },
  airCelsius: { kind: 'quantity', label: 'Air about the relays', unit: '°C', default: 55, min: -10, max: 100, stepping: 5 },
  margin: { kind: 'quantity', label: 'Margin', unit: '%', default: 0.2, min: 0, max: 2, stepping: 0.05, hint: 'for what is asked for later' },
  loads: {
    kind: 'rows',
    label: 'What the rail feeds',
    noun: 'load',
    row: {
      kind: {
        kind: 'choice',
        label: 'Kind of load',
        options: [
          { value: 'relay', label: 'relay' },
          { value: 'indicator', label: 'indicator' },
          { value: 'optocoupler', label: 'optocoupler' },
          { value: 'heater', label: 'heater' },
          { value: 'logic', label: 'logic board' },
          { value: 'fixed-amps', label: 'fixed current' },
          { value: 'fixed-watts', label: 'fixed power' },
        ],
        default: 'relay',
      },
      name: { kind: 'text', label: 'Name', default: 'Relay', maxLength: 40 },
      count: { kind: 'quantity', label: 'How many', unit: '', default: 1, min: 1, max: 50, stepping: 1, whole: true },
      volts: { kind: 'quantity', label: 'Rated volts', unit: 'V', default: 12, min: 1, max: 60, stepping: 1 },
      ohms: { kind: 'quantity', label: 'Coil resistance', unit: 'Ω', default: 360, min: 5, max: 20_000, stepping: 'e12', hint: 'at room temperature' },
      amps: { kind: 'quantity', label: 'Current of one', unit: 'A', default: 0.01, min: 1e-4, max: 10, assume: 'mA', stepping: 'e12' },
      watts: { kind: 'quantity', label: 'Power of one', unit: 'W', default: 1, min: 1e-3, max: 100, stepping: '1-2-5' },
      onAtOnce: { kind: 'quantity', label: 'On at once', unit: '', min: 0, max: 50, stepping: 1, whole: true, optional: true, blank: 'all' },
    },
    default: [
      { kind: 'relay', name: 'Channel relay', count: 2, volts: 12, ohms: 360 },
      { kind: 'indicator', name: 'Channel lamp, one lit', amps: 0.01 },
    ],
    min: 0,
    max: 20,
  },
} as const satisfies FieldSet;

type Values = ValuesOf<typeof fields>;
type Row = Values['loads'][number];

export interface LoadListView extends ViewModel {
  readonly figures: readonly CornerFigure[];
  /** Amps of each row with all of it on: typical, and most. */
  readonly lines: readonly { readonly typicalAmps: number; readonly maxAmps: number }[];
  readonly findings: readonly Finding[];
  readonly working: readonly WorkingStep[];
  /** Everything on at worst, and the margin. */
  readonly designAmps: number;
  readonly handOn: readonly HandOnLink[];
}

function itemOf(row: Row): LoadItem {
  const counted = { name: row.name.trim() === '' ? row.kind : row.name, count: row.count, ...(row.onAtOnce === undefined ? {} : { onAtOnce: row.onAtOnce }) };
  switch (row.kind) {
    case 'relay':
      return { ...counted, kind: 'relay', volts: row.volts, ohms: row.ohms };
    case 'heater':
      return { ...counted, kind: 'heater', volts: row.volts, amps: row.amps };
    case 'fixed-watts':
      return { ...counted, kind: 'fixed-watts', watts: row.watts };
    default:
      return { ...counted, kind: row.kind, amps: row.amps };
  }
}

/** Cell of a row that a refused quantity belongs to; the module names them `led.forwardVolts`, `onAtOnce`, and so on. */
const CELLS: Readonly<Record<string, keyof Row>> = {
  count: 'count', onAtOnce: 'onAtOnce', amps: 'amps', watts: 'watts', volts: 'volts',
  'relay.volts': 'volts', 'relay.ohms': 'ohms', 'led.amps': 'amps', 'led.forwardVolts': 'amps', 'led.seriesOhms': 'amps',
};

/** Adds up the list; a value that the module refuses is named by its row. */
function sumsOf(values: Values): LoadSums {
  const rail = {
    railVolts: values.railVolts,
    railMinVolts: values.railVolts * (1 - values.railSpread),
    railMaxVolts: values.railVolts * (1 + values.railSpread),
    airCelsius: values.airCelsius,
    marginRatio: values.margin,
  };
  const items = values.loads.map(itemOf);
  items.forEach((item, index) => {
    try {
      addLoads({ ...rail, items: [item] });
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      throw new InputError(`loads.${index}.${CELLS[error.quantity] ?? 'name'}`, error.given, error.allowed);
    }
  });
  return addLoads({ ...rail, items });
}

const spread = (min: number, max: number): string => `${showQuantity(min, 'A')} to ${showQuantity(max, 'A')} by tolerance`;

function sumSteps(sums: LoadSums, margin: number): readonly WorkingStep[] {
  return [
    workingStep({
      name: 'everything-on',
      words: 'Everything on, every part at the end of its tolerance that draws most, the rail at its highest.',
      formula: 'The sum of the most that each line can draw',
      numbers: [],
      result: { symbol: 'Imax', value: sums.everything.max, unit: 'A' },
      source: { id: 'arithmetic' },
    }),
    workingStep({
      name: 'design-current',
      words: 'The current to design for.',
      formula: 'Id = Imax × (1 + m)',
      numbers: [{ symbol: 'Imax', value: sums.everything.max, unit: 'A' }, { symbol: 'm', value: margin, unit: '' }],
      result: { symbol: 'Id', value: sums.design.amps, unit: 'A' },
      source: { id: 'arithmetic' },
    }),
  ];
}

/** What the verdict stands on: only coils and heaters are held against the rail. */
const railWords = (findings: readonly Finding[]): string => {
  if (findings.length === 0) return '. Nothing on the list is held against the rail';
  return worstLevel(findings) === 'within' ? '. Coils and heaters are within their range at both ends of the rail' : '. Not every load is within its range, see below';
};

/** The first relay on this rail, to be held against it hot; none when that calculator has no room for it. */
function coilLinks({ loads, railVolts, railSpread, airCelsius }: Values): readonly HandOnLink[] {
  const relay = loads.find(({ kind }) => kind === 'relay');
  const { ratedVolts, ohms, lowestVolts, highestVolts } = coilCheckFace.fields;
  const [lowest, highest] = [railVolts * (1 - railSpread), railVolts * (1 + railSpread)];
  if (relay === undefined || relay.volts < ratedVolts.min || relay.volts > ratedVolts.max || relay.ohms < ohms.min || lowest < lowestVolts.min || highest > highestVolts.max) return [];
  const given = { ratedVolts: relay.volts, ohms: relay.ohms, lowestVolts: lowest, highestVolts: highest, airCelsius };
  return [handOn(coilCheckFace, { what: relay.name.trim() === '' ? 'The relay' : relay.name, given })];
}

/** A transformer for it, where it is a load that small ones are made for. */
const transformerLink = ({ airCelsius }: Values, amps: number): readonly HandOnLink[] => {
  const { min, max } = windingPickFace.fields.loadAmps;
  return amps < min || amps > max ? [] : [handOn(windingPickFace, { what: `A transformer for ${showQuantity(amps, 'A')}`, given: { loadAmps: Number(amps.toPrecision(3)), airCelsius } })];
};

function solve(values: Values): LoadListView {
  const sums = sumsOf(values);
  const { running, everything, switchOn, design, findings } = sums;
  const inrush = everything.typical > 0 ? switchOn.everythingAmps / everything.typical : 1;
  return {
    level: worstLevel(findings),
    summary: `${showQuantity(running.typical, 'A')} in use, ${showQuantity(everything.max, 'A')} at worst, ${showQuantity(switchOn.everythingAmps, 'A')} at switch-on; design for ${showQuantity(design.amps, 'A')}${railWords(findings)}`,
    figures: [
      { name: 'in use, typical', value: running.typical, unit: 'A', of: '', found: spread(running.min, running.max) },
      { name: 'everything on, at worst', value: everything.max, unit: 'A', of: '', found: `typical ${showQuantity(everything.typical, 'A')}` },
      { name: 'at switch-on, cold', value: switchOn.everythingAmps, unit: 'A', of: '', found: `${inrush.toPrecision(2)} times the typical sum` },
      { name: 'design for', value: design.amps, unit: 'A', of: '', found: `the worst sum and ${showMarked(values.margin, '%')}` },
    ],
    lines: sums.lines.map((line) => ({ typicalAmps: line.everything.typical, maxAmps: line.everything.max })),
    findings,
    working: [...sums.lines.map((line) => line.working), ...sumSteps(sums, values.margin)],
    designAmps: design.amps,
    handOn: [handOn(rectify, { what: showQuantity(design.amps, 'A'), given: { loadAmps: Number(design.amps.toPrecision(3)) } }), ...transformerLink(values, design.amps), ...coilLinks(values)],
  };
}

export const loadList = defineCalculator({
  id: 'load-list',
  version: 1,
  question: 'What must this rail feed, running and at switch-on?',
  fields,
  quantities: { railMinVolts: 'railSpread', railMaxVolts: 'railSpread', items: 'loads', marginRatio: 'margin' },
  solve,
});
