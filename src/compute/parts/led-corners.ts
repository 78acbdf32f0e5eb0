import { requireNumber } from '../errors.ts';
import { ledAmps, ledOnAc } from './led.ts';
import type { Spread } from './row.ts';

/** An LED string behind its resistor, at one end of its supply and of its drop. */
export interface LedCorner {
  readonly supplyVolts: number;
  /** Mean over a cycle, on AC. */
  readonly amps: number;
  readonly peakAmps: number;
  /** Heat in the resistor. */
  readonly watts: number;
  /** Share of the time it is lit: 1 on DC, 0 when dark. */
  readonly litShare: number;
  /** Reverse volts on each LED of the string; 0 on DC. */
  readonly reverseVolts: number;
}

export interface LedCorners {
  /** Lowest supply, LEDs of most drop. */
  readonly low: LedCorner;
  readonly nominal: LedCorner;
  /** Highest supply, LEDs of least drop. */
  readonly high: LedCorner;
}

/**
 * What an LED string behind a resistor takes at the corners of its supply and of its drop.
 *
 * `volts` DC, or RMS of a sine; `spread` is how far it strays either way, as a ratio (0 to 0.9). `forwardVolts` of one
 * LED. On AC the reverse volts are taken to divide evenly over a string. Throws `InputError` as `ledAmps` and `ledOnAc` do.
 * Source: solved; drops typical.
 */
export function ledCorners(options: {
  readonly feed: 'dc' | 'ac';
  readonly volts: number;
  readonly spread: number;
  readonly forwardVolts: Spread;
  readonly count?: number;
  readonly ohms: number;
  readonly antiparallel?: boolean;
}): LedCorners {
  const { feed, forwardVolts, ohms, count = 1, antiparallel = false } = options;
  const spread = requireNumber('spread', options.spread, { min: 0, max: 0.9 });
  const at = (supplyVolts: number, drop: number): LedCorner => {
    if (feed === 'dc') {
      const amps = ledAmps({ railVolts: supplyVolts, forwardVolts: drop, count, ohms });
      return { supplyVolts, amps, peakAmps: amps, watts: amps * amps * ohms, litShare: amps > 0 ? 1 : 0, reverseVolts: 0 };
    }
    const found = ledOnAc({ rmsVolts: supplyVolts, forwardVolts: drop, count, ohms, antiparallel });
    return { supplyVolts, amps: found.meanAmps, peakAmps: found.peakAmps, watts: found.watts, litShare: found.litShare, reverseVolts: found.reverseVolts / count };
  };
  const { volts } = options;
  return { low: at(volts * (1 - spread), forwardVolts.max), nominal: at(volts, forwardVolts.typical), high: at(volts * (1 + spread), forwardVolts.min) };
}
