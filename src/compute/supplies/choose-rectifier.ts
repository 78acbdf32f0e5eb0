import { say } from '../findings/check.ts';
import { DIODES, diodePart, diodeTypeFor } from '../parts/diode.ts';
import type { DiodePart } from '../parts/diode.ts';
import type { RectifierTopology } from '../rectifier/rectifier-types.ts';
import { chainDiode } from './chain-parts.ts';
import type { ChainDiode } from './chain-types.ts';
import type { Mains } from './corners.ts';
import { SMALL_VOLUMES } from './part-volumes.ts';
import type { SizedPart } from './supply-types.ts';

/** Diodes of a topology, and the peaks of the winding (of one half, for a centre tap) that each holds off in reverse. */
export const DIODE_COUNT: Record<RectifierTopology, number> = { bridge: 4, 'centre-tap': 2, 'half-wave': 1, doubler: 2 };
const REVERSE_PEAKS: Record<RectifierTopology, number> = { bridge: 1, 'centre-tap': 2, 'half-wave': 2, doubler: 2 };
/** Mean current of one diode over the DC current: by the balance of charge. */
const MEAN_SHARE: Record<RectifierTopology, number> = { bridge: 0.5, 'centre-tap': 0.5, 'half-wave': 1, doubler: 1 };

/** Share of the mean rating to fill; the rating is for cooler air than a chassis has. */
const WANTED_SHARE = 0.8;

export interface RectifierChoice {
  readonly diode: ChainDiode;
  readonly part: SizedPart;
}

export interface RectifierWish {
  /** Row named by the plan; chosen here when left out. */
  readonly named: string | undefined;
  readonly kind: 'silicon' | 'schottky';
  readonly topology: RectifierTopology;
  readonly dcAmps: number;
  readonly openCircuitVolts: number;
  readonly mains: Mains;
}

/** Diodes in rising order of size, the plain before the module. */
const inOrder = (kind: DiodePart['kind']): DiodePart[] => DIODES.filter((row) => row.kind === kind).sort((a, b) => a.averageAmps - b.averageAmps);

/**
 * Picks rectifier diodes: the smallest catalogue type of the kind whose mean rating, derated for a reservoir, is filled
 * to four fifths at most, in the lowest reverse rating of at least twice the peak at high mains. A row named by the
 * plan is taken as it is, its checks speak for it. Throws `InputError` for a name that is not in the catalogue.
 */
export function chooseRectifier(wish: RectifierWish): RectifierChoice {
  const { named, kind, topology, dcAmps, openCircuitVolts, mains } = wish;
  const meanAmps = dcAmps * MEAN_SHARE[topology];
  const reverseVolts = (REVERSE_PEAKS[topology] * openCircuitVolts * Math.SQRT2 * mains.highVolts) / mains.nominalVolts;
  const rows = inOrder(kind);
  const fitting = rows.find((row) => row.averageAmps * row.capacitiveLoadFactor * WANTED_SHARE >= meanAmps && diodeTypeFor({ part: row, reverseVolts }) !== undefined);
  const row = named === undefined ? (fitting ?? rows.at(-1) ?? diodePart('1n400x')) : diodePart(named);
  const type = diodeTypeFor({ part: row, reverseVolts }) ?? row.types.at(-1);
  const diode = chainDiode(row, type?.name);
  const count = row.id.startsWith('bridge') ? 1 : DIODE_COUNT[topology];
  return {
    diode,
    part: {
      role: 'rectifier',
      name: row.id.startsWith('bridge') ? `${row.name}, ${diode.name}` : diode.name,
      count,
      chosenBy: named === undefined ? 'sized' : 'plan',
      why:
        `Each carries ${say(meanAmps, 'A')} on average and holds off ${say(reverseVolts, 'V')} at high mains.` +
        (row.kind === 'schottky' ? ' Schottky diodes save about half a volt each where every volt counts; they leak when hot.' : ''),
      numbers: [
        { name: 'mean current', value: meanAmps, unit: 'A' },
        { name: 'reverse peak', value: reverseVolts, unit: 'V' },
        { name: 'rated reverse', value: diode.ratedReverseVolts, unit: 'V' },
      ],
      basis: row.basis,
      cubicMetres: SMALL_VOLUMES.rectifier,
    },
  };
}
