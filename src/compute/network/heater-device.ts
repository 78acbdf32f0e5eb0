import { behaviourDevice } from './behaviour-device.ts';
import type { Device } from './device.ts';
import type { HeaterElement } from './elements.ts';

/** Exponent of tungsten's resistance against absolute temperature. Source: H. A. Jones and I. Langmuir, G. E. Rev. 30 (1927). */
const RESISTANCE_EXPONENT = 1.2;

/**
 * The dimensionless time a filament needs, at its rated voltage, from `cold` to 90 % of its hot resistance:
 * du/ds = u^−1.2 − (u⁴ − cold⁴)/(1 − cold⁴), by the midpoint rule.
 */
function warmUpUnits(cold: number): number {
  const target = 0.9 ** (1 / RESISTANCE_EXPONENT);
  const rate = (u: number): number => u ** -RESISTANCE_EXPONENT - (u ** 4 - cold ** 4) / (1 - cold ** 4);
  const steps = 2000;
  const du = (target - cold) / steps;
  let units = 0;
  for (let i = 0; i < steps; i += 1) units += du / rate(cold + (i + 0.5) * du);
  return units;
}

/**
 * A filament as one heat capacity that radiates: absolute temperature u (1 when hot) follows
 * du/dt ∝ power/hot power − (u⁴ − cold⁴)/(1 − cold⁴), resistance follows u^1.2, and the cold temperature is the one that
 * gives the stated cold resistance. The scale of time is set by the stated warm-up time.
 *
 * A valve's heater also warms its cathode, which drags the end of the curve out; the first second, which decides
 * whether a current-limited supply starts, is well drawn.
 */
export function heaterDevice(element: HeaterElement, ends: readonly [number, number]): Device {
  const { name, between, hotVolts, hotAmps, coldRatio, warmUpSeconds, initialWarmth = 0 } = element;
  // A ratio of one would be a plain resistor: keep the law defined just short of it.
  const cold = Math.min(coldRatio, 0.999) ** (1 / RESISTANCE_EXPONENT);
  const secondsPerUnit = warmUpSeconds / warmUpUnits(Math.min(cold, 0.9 ** (1 / RESISTANCE_EXPONENT) - 1e-3));
  const hotOhms = hotVolts / hotAmps;
  const hotWatts = hotVolts * hotAmps;
  const ohmsAt = (u: number): number => hotOhms * Math.max(u, cold / 2) ** RESISTANCE_EXPONENT;
  return behaviourDevice(
    {
      kind: 'behaviour',
      name,
      between,
      initialState: [cold + (1 - cold) * initialWarmth],
      amps: ({ volts, state }) => volts / ohmsAt(state[0] as number),
      rates: ({ volts, amps, state }) => {
        const u = state[0] as number;
        return [((volts * amps) / hotWatts - (u ** 4 - cold ** 4) / (1 - cold ** 4)) / secondsPerUnit];
      },
    },
    ends,
  );
}
