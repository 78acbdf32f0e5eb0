import type { Device } from './device.ts';
import type { RegulatorElement } from './elements.ts';
import type { NodeEquations } from './node-equations.ts';

/** Width of the rounding where one law hands over to another, amps: far below any load, wide enough for Newton's method. */
const HANDOVER_AMPS = 1e-4;

/** The smaller of two values, its corner rounded; with the share of each in the slope. */
function lesser(a: number, b: number): { readonly value: number; readonly shareOfA: number } {
  const apart = a - b;
  const root = Math.hypot(apart, HANDOVER_AMPS);
  return { value: (a + b - root) / 2, shareOfA: (1 - apart / root) / 2 };
}

/**
 * A series regulator: of three currents the least flows. What holds the output at its set volts through `outputOhms`;
 * what the input can push through the pass part once its dropout is overcome; and the current limit, which folds back
 * in a straight line with the volts across the part. Never backwards.
 */
export function regulatorDevice(
  element: RegulatorElement,
  [input, output, reference]: readonly [number, number, number],
): Device {
  const { name, setVolts, outputOhms = 0.01, dropoutVolts, dropoutOhms = 0.05, limit } = element;
  let amps = 0;
  let byInput = 0;
  let byOutput = 0;
  let byReference = 0;
  let lastWanted = 0;

  const follow = (eq: NodeEquations, iterating: boolean): void => {
    const across = eq.volts(input, output);
    const holding = (setVolts - eq.volts(output, reference)) / outputOhms;
    const passing = (across - dropoutVolts) / dropoutOhms;
    const regulated = lesser(holding, passing);
    let value = regulated.value;
    byOutput = -regulated.shareOfA / outputOhms;
    byReference = regulated.shareOfA / outputOhms;
    let byAcross = (1 - regulated.shareOfA) / dropoutOhms;
    if (limit) {
      const { peakAmps, foldVolts, foldedAmps, foldedVolts } = limit;
      const share = Math.min(1, Math.max(0, (across - foldVolts) / (foldedVolts - foldVolts)));
      const most = peakAmps + (foldedAmps - peakAmps) * share;
      const mostSlope = share > 0 && share < 1 ? (foldedAmps - peakAmps) / (foldedVolts - foldVolts) : 0;
      const held = lesser(value, most);
      value = held.value;
      byOutput *= held.shareOfA;
      byReference *= held.shareOfA;
      byAcross = byAcross * held.shareOfA + mostSlope * (1 - held.shareOfA);
    }
    const root = Math.hypot(value, HANDOVER_AMPS);
    let open = (1 + value / root) / 2;
    amps = (value + root) / 2;
    if (iterating) {
      // A Newton step that shot past the set volts would land where nothing depends on anything, and fall back to
      // nothing: for that one step the current may go backwards along its own line.
      if (value < -HANDOVER_AMPS && lastWanted > HANDOVER_AMPS) {
        open = 1;
        amps = value;
        eq.limited = true;
      }
      lastWanted = value;
    }
    byInput = byAcross * open;
    byOutput = (byOutput - byAcross) * open;
    byReference *= open;
  };

  return {
    name,
    first: input,
    second: output,
    connects: () => true,
    stamp: (eq) => {
      follow(eq, true);
      const { residual, jacobian, stride } = eq;
      for (const [node, sign] of [[input, 1], [output, -1]] as const) {
        const row = node * stride;
        residual[node] = (residual[node] as number) + sign * amps;
        jacobian[row + input] = (jacobian[row + input] as number) + sign * byInput;
        jacobian[row + output] = (jacobian[row + output] as number) + sign * byOutput;
        jacobian[row + reference] = (jacobian[row + reference] as number) + sign * byReference;
      }
    },
    settle: (eq) => {
      follow(eq, false);
      return amps;
    },
    forget: () => {
      lastWanted = 0;
    },
  };
}
