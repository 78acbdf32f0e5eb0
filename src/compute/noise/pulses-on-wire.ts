import { SolveError } from '../errors.ts';
import type { WireRow } from '../parts/wire.ts';
import type { RectifierTopology } from '../rectifier/rectifier-types.ts';
import { solveCorner } from '../supplies/chain-corner.ts';
import type { ChainInput, SolvedCorner } from '../supplies/chain-types.ts';
import { operatingCorners } from '../supplies/corners.ts';
import type { MainsState } from '../supplies/corners.ts';
import { loopAmps } from './pulse-spectrum.ts';
import { sharedWireVolts } from './shared-wire.ts';
import type { SharedWire } from './shared-wire.ts';

/** What a shared length of ground wire carries: the pulses that charge the reservoir, or only what the load returns. */
export type SharedCurrent = 'pulses' | 'load';

export interface PulsesOnWire {
  readonly mains: MainsState;
  readonly corner: SolvedCorner;
  /** One mains cycle of the current in the shared wire. */
  readonly amps: Float64Array;
  readonly peakAmps: number;
  readonly shared: SharedWire;
  /** Largest moment of the moving part: the steady part shifts a level and is not heard. */
  readonly movingPeakVolts: number;
}

/**
 * A supply with everything on at low, nominal and high mains, the reservoir as marked (the largest at high mains, where it
 * takes the tallest pulses). Throws `SolveError` where it has no steady state.
 */
export function mainsCornersOf(input: ChainInput): readonly SolvedCorner[] {
  const corners = operatingCorners(input.mains).filter(({ load, reservoir, mains }) => load === 'everything' && reservoir === (mains === 'high' ? 'largest' : 'marked'));
  return corners.map((at) => {
    const corner = solveCorner(input, at);
    if (!corner.solved) throw new SolveError(corner.reason, corner.message);
    return corner;
  });
}

/**
 * What a rectifier puts on a ground wire that something else shares, at solved corners of its supply: the pulses times
 * the wire's resistance and inductance, harmonic by harmonic (40 of the mains). Joints are left out, and leakage
 * inductance, which rounds the pulses: an estimate. Throws `InputError` as the parts do.
 */
export function pulsesOnWire(options: {
  readonly corners: readonly SolvedCorner[];
  readonly topology: RectifierTopology;
  readonly carries: SharedCurrent;
  readonly row: WireRow;
  readonly metres: number;
  readonly celsius?: number;
}): readonly PulsesOnWire[] {
  const { topology, carries, row, metres, celsius } = options;
  return options.corners.map((corner): PulsesOnWire => {
    const loop = loopAmps({ topology, rectifier: corner.rectifier });
    const steady = carries === 'load';
    const amps = steady ? loop.rectified.map(() => corner.rectifier.load.meanAmps) : loop.rectified;
    const shared = sharedWireVolts({ row, metres, amps, hertz: corner.corner.hertz, ...(celsius === undefined ? {} : { celsius }) });
    return {
      mains: corner.corner.mains, corner, amps, shared,
      peakAmps: amps.reduce((most, each) => Math.max(most, each), 0),
      // Harmonics of a steady current are rounding errors; a level does not move.
      movingPeakVolts: steady ? 0 : Math.max(0, shared.peakVolts - shared.meanVolts),
    };
  });
}
