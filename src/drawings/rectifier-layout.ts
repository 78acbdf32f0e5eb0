import type { RectifierTopology } from '../compute/rectifier/rectifier-types.ts';

/** Where a diode stands and which way it points: `turn` 0 lets current flow upwards. */
export interface DiodePlace {
  readonly name: string;
  readonly at: readonly [number, number];
  readonly turn: number;
  /** The half of the cycle in which it can carry current. */
  readonly half: 'forward' | 'reverse';
}

/** One way of drawing a rectifier: from its winding to the two buses that feed the load. */
export interface RectifierLayout {
  readonly windings: readonly (readonly [number, number])[];
  readonly diodes: readonly DiodePlace[];
  readonly capacitors: readonly { readonly name: string; readonly at: readonly [number, number] }[];
  /** Wires left of the reservoir's positive and negative bus ends. */
  readonly wires: string;
  readonly nodes: readonly (readonly [number, number])[];
  /** The loop that the charging current goes round, in its direction, in each half of the cycle. */
  readonly charging: Readonly<Record<'forward' | 'reverse', string>>;
}

/** Heights of the two buses, and where the reservoir stands. */
export const PLUS = 40;
export const MINUS = 220;
export const RESERVOIR_X = 226;
const C = RESERVOIR_X;

const middle = (PLUS + MINUS) / 2;

export const LAYOUTS: Readonly<Record<RectifierTopology, RectifierLayout>> = {
  bridge: {
    windings: [[48, middle]],
    diodes: [
      { name: 'D1', at: [104, 70], turn: 0, half: 'forward' },
      { name: 'D2', at: [104, 190], turn: 0, half: 'reverse' },
      { name: 'D3', at: [162, 70], turn: 0, half: 'reverse' },
      { name: 'D4', at: [162, 190], turn: 0, half: 'forward' },
    ],
    capacitors: [{ name: 'C1', at: [C, middle] }],
    wires: `M48 104V100H104M48 156V160H162M104 ${PLUS}V44M104 96V164M104 216V${MINUS}M162 ${PLUS}V44M162 96V164M162 216V${MINUS}M104 ${PLUS}H${C}M104 ${MINUS}H${C}M${C} ${PLUS}V104M${C} 156V${MINUS}`,
    nodes: [[104, 100], [162, 160], [162, PLUS], [162, MINUS]],
    charging: {
      forward: `M48 104V100H104V${PLUS}H${C}V${MINUS}H162V160H48V156`,
      reverse: `M48 156V160H162V${PLUS}H${C}V${MINUS}H104V100H48V104`,
    },
  },
  'centre-tap': {
    windings: [[48, 104], [48, 156]],
    diodes: [
      { name: 'D1', at: [120, PLUS], turn: 90, half: 'forward' },
      { name: 'D2', at: [120, 190], turn: 90, half: 'reverse' },
    ],
    capacitors: [{ name: 'C1', at: [C, middle] }],
    wires: `M48 78V${PLUS}H94M48 182V190H94M146 ${PLUS}H${C}M146 190H176V${PLUS}M48 130H78V${MINUS}H${C}M${C} ${PLUS}V104M${C} 156V${MINUS}`,
    nodes: [[48, 130], [176, PLUS]],
    charging: {
      forward: `M48 78V${PLUS}H${C}V${MINUS}H78V130H48`,
      reverse: `M48 182V190H176V${PLUS}H${C}V${MINUS}H78V130H48`,
    },
  },
  'half-wave': {
    windings: [[48, middle]],
    diodes: [{ name: 'D1', at: [130, PLUS], turn: 90, half: 'forward' }],
    capacitors: [{ name: 'C1', at: [C, middle] }],
    wires: `M48 104V${PLUS}H104M156 ${PLUS}H${C}M48 156V${MINUS}H${C}M${C} ${PLUS}V104M${C} 156V${MINUS}`,
    nodes: [],
    charging: { forward: `M48 104V${PLUS}H${C}V${MINUS}H48V156`, reverse: '' },
  },
  doubler: {
    windings: [[48, middle]],
    diodes: [
      { name: 'D1', at: [112, 70], turn: 0, half: 'forward' },
      { name: 'D2', at: [112, 190], turn: 0, half: 'reverse' },
    ],
    capacitors: [{ name: 'C1', at: [C, 84] }, { name: 'C2', at: [C, 176] }],
    wires: `M48 104V100H112M48 156V160H172V130H${C}M112 ${PLUS}V44M112 96V164M112 216V${MINUS}M112 ${PLUS}H${C}M112 ${MINUS}H${C}M${C} ${PLUS}V58M${C} 110V150M${C} 202V${MINUS}`,
    nodes: [[112, 100], [C, 130]],
    charging: {
      forward: `M48 104V100H112V${PLUS}H${C}V130H172V160H48V156`,
      reverse: `M48 156V160H172V130H${C}V${MINUS}H112V100H48V104`,
    },
  },
};
