import { requireNumber } from '../errors.ts';
import { CAPACITANCE_TOLERANCE, END_OF_LIFE } from '../parts/capacitor.ts';
import { copperRatio } from '../parts/copper.ts';
import { MAINS_CREST } from '../parts/mains.ts';

/** How high the mains stands. */
export type MainsState = 'low' | 'nominal' | 'high';
/** What the rail feeds: nothing, what is on while the amp is played, or everything at once. */
export type LoadState = 'off' | 'running' | 'everything';
/**
 * Which capacitor is in the circuit: the marked one, the smallest its tolerance allows after its whole life, or the
 * largest its tolerance allows when new.
 */
export type ReservoirState = 'marked' | 'smallest-oldest' | 'largest';

/** The mains at one place, RMS. */
export interface Mains {
  readonly nominalVolts: number;
  readonly lowVolts: number;
  readonly highVolts: number;
  readonly hertz: number;
  /** A second frequency the amp must also work on (an export amp). The low-mains corners are then solved at both. */
  readonly alsoHertz?: number;
}

/** One combination of mains, load and part tolerance at which a supply is solved. */
export interface OperatingCorner {
  /** Stable name made of its states, e.g. `low-everything-smallest-oldest-50`. */
  readonly id: string;
  /** The same in words, as a finding names it. */
  readonly words: string;
  readonly mains: MainsState;
  readonly load: LoadState;
  readonly reservoir: ReservoirState;
  readonly hertz: number;
  /** Mains volts at this corner over the nominal mains volts. */
  readonly mainsRatio: number;
  /** Peak over RMS of the mains wave. */
  readonly crestFactor: number;
  /** Capacitance over the marked capacitance. */
  readonly faradsRatio: number;
  /** Series resistance over that of a new capacitor. */
  readonly esrRatio: number;
  /** Added to the forward drop of every diode: the spread between units. */
  readonly diodeShiftVolts: number;
  /** Winding resistance over its resistance as given, where it was measured cold. */
  readonly coldCopperRatio: number;
}

/** Forward drops of one type spread by about ±50 mV between units (bench practice, typical). */
export const DIODE_SPREAD_VOLTS = 0.05;
/** A winding that was measured cold warms by this much in use (assumed, of a limit of 80 K for class A). */
const COPPER_RISE_KELVIN = 50;
const COLD_CELSIUS = 20;

const FARADS_RATIO: Record<ReservoirState, number> = {
  marked: 1,
  'smallest-oldest': (1 - CAPACITANCE_TOLERANCE) * END_OF_LIFE.capacitanceFactor,
  largest: 1 + CAPACITANCE_TOLERANCE,
};

const RESERVOIR_WORDS: Record<ReservoirState, string> = {
  marked: 'reservoir as marked',
  'smallest-oldest': 'smallest and oldest reservoir',
  largest: 'largest reservoir',
};
const LOAD_WORDS: Record<LoadState, string> = {
  off: 'load off',
  running: 'load running',
  everything: 'everything on',
};

/** The reservoirs that matter at each state of the mains: the worst for the valley, and the worst for heat and inrush. */
const RESERVOIRS_AT: Record<MainsState, readonly ReservoirState[]> = {
  low: ['smallest-oldest', 'marked'],
  nominal: ['marked', 'smallest-oldest'],
  high: ['largest', 'smallest-oldest'],
};

const MAINS_STATES = ['low', 'nominal', 'high'] as const;
const LOAD_STATES = ['everything', 'running', 'off'] as const;

function corner(mains: Mains, state: MainsState, load: LoadState, reservoir: ReservoirState, hertz: number, showHertz: boolean): OperatingCorner {
  const volts = { low: mains.lowVolts, nominal: mains.nominalVolts, high: mains.highVolts }[state];
  const words = [`${state} mains`, LOAD_WORDS[load], RESERVOIR_WORDS[reservoir]];
  if (showHertz) words.push(`${hertz} Hz`);
  return {
    id: `${state}-${load}-${reservoir}-${hertz}`,
    words: words.join(', '),
    mains: state,
    load,
    reservoir,
    hertz,
    mainsRatio: volts / mains.nominalVolts,
    crestFactor: MAINS_CREST[state],
    faradsRatio: FARADS_RATIO[reservoir],
    esrRatio: reservoir === 'smallest-oldest' ? END_OF_LIFE.esrFactor : 1,
    diodeShiftVolts: { low: DIODE_SPREAD_VOLTS, nominal: 0, high: -DIODE_SPREAD_VOLTS }[state],
    coldCopperRatio: state === 'high' ? 1 : copperRatio({ fromCelsius: COLD_CELSIUS, toCelsius: COLD_CELSIUS + COPPER_RISE_KELVIN }),
  };
}

/**
 * Every corner at which a supply is solved: mains low, nominal and high, each with the load off, running and everything
 * on, each with the two reservoirs that matter there (one when the load is off, since an unloaded reservoir sits at the
 * peak whatever its size).
 *
 * Low mains has a crest factor of 1.35, diodes with the higher drop and warm copper; high mains a pure sine, diodes
 * with the lower drop and cold copper. Worst regulator dropout and output tolerance are applied by the chain at every
 * corner. With `alsoHertz`, the corners at low mains come at both frequencies: the lower one digs the deeper valley.
 *
 * Throws `InputError` for mains outside 50 to 500 V or 40 to 70 Hz, or not in the order low ≤ nominal ≤ high.
 */
export function operatingCorners(mains: Mains): readonly OperatingCorner[] {
  requireNumber('mains.nominalVolts', mains.nominalVolts, { min: 50, max: 500 });
  requireNumber('mains.lowVolts', mains.lowVolts, { min: 50, max: mains.nominalVolts });
  requireNumber('mains.highVolts', mains.highVolts, { min: mains.nominalVolts, max: 600 });
  requireNumber('mains.hertz', mains.hertz, { min: 40, max: 70 });
  if (mains.alsoHertz !== undefined) requireNumber('mains.alsoHertz', mains.alsoHertz, { min: 40, max: 70 });

  const both = mains.alsoHertz !== undefined && mains.alsoHertz !== mains.hertz;
  const corners: OperatingCorner[] = [];
  for (const state of MAINS_STATES) {
    const frequencies = both && state === 'low' ? [mains.hertz, mains.alsoHertz as number] : [mains.hertz];
    for (const hertz of frequencies) {
      for (const load of LOAD_STATES) {
        const reservoirs = load === 'off' ? RESERVOIRS_AT[state].slice(0, 1) : RESERVOIRS_AT[state];
        for (const reservoir of reservoirs) corners.push(corner(mains, state, load, reservoir, hertz, both));
      }
    }
  }
  return corners;
}
