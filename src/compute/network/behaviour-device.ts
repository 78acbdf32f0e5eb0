import type { Device } from './device.ts';
import type { BehaviourElement } from './elements.ts';
import type { NodeEquations } from './node-equations.ts';

/** Rounds in which a state is brought into line with the voltage of the present Newton iterate. */
const STATE_ROUNDS = 3;

/** An element given as pure functions of its voltage, its state and time. */
export function behaviourDevice(element: BehaviourElement, [first, second]: readonly [number, number]): Device {
  const { name, initialState, amps: ampsOf, rates: ratesOf, crossing, next } = element;
  const count = initialState.length;
  let state: number[] = [...initialState];

  /** The state within the present step, and the current there. */
  const follow = (eq: NodeEquations): number => {
    const volts = eq.volts(first, second);
    const at = device.state as number;
    let amps = 0;
    for (let round = 0; round < STATE_ROUNDS; round += 1) {
      amps = ampsOf({ volts, seconds: eq.seconds, state });
      const rates = ratesOf?.({ volts, amps, seconds: eq.seconds, state });
      let moved = false;
      const updated: number[] = [];
      for (let k = 0; k < count; k += 1) {
        const rate = rates?.[k] ?? 0;
        eq.rates[at + k] = rate;
        const value = (eq.bases[at + k] as number) + eq.reach * rate;
        if (Math.abs(value - (state[k] as number)) > 1e-9 * Math.abs(value) + 1e-15) moved = true;
        updated.push(value);
      }
      state = updated;
      if (!moved) return amps;
    }
    eq.limited = true;
    return ampsOf({ volts, seconds: eq.seconds, state });
  };

  const device: Device = {
    name, first, second,
    initialStates: initialState,
    state: -1,
    connects: () => true,
    stamp: (eq) => {
      const volts = eq.volts(first, second);
      const amps = follow(eq);
      // The functions come without slopes: a central difference, wide enough to stand clear of rounding.
      const nudge = 1e-6 * Math.max(1, Math.abs(volts));
      const up = ampsOf({ volts: volts + nudge, seconds: eq.seconds, state });
      const down = ampsOf({ volts: volts - nudge, seconds: eq.seconds, state });
      eq.addBranch(first, second, amps, (up - down) / (2 * nudge));
    },
    settle: follow,
  };
  if (crossing) {
    device.crossing = (eq) => {
      const amps = follow(eq);
      return crossing({ volts: eq.volts(first, second), amps, seconds: eq.seconds, state });
    };
  }
  if (next) {
    device.happen = (eq, states) => {
      const at = device.state as number;
      const before = Array.from(states.subarray(at, at + count));
      const volts = eq.volts(first, second);
      const amps = ampsOf({ volts, seconds: eq.seconds, state: before });
      state = [...next({ volts, amps, seconds: eq.seconds, state: before })];
      for (let k = 0; k < count; k += 1) states[at + k] = state[k] as number;
    };
  }
  return device;
}
