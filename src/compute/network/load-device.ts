import type { Device } from './device.ts';
import type { LoadElement } from './elements.ts';

/** Constant power above a floor voltage; below it the resistance that draws the same at the floor. */
export function loadDevice({ name, watts, minVolts }: LoadElement, [first, second]: readonly [number, number]): Device {
  const floorSiemens = watts / (minVolts * minVolts);
  return {
    name, first, second,
    connects: () => watts > 0,
    stamp: (eq) => {
      const v = eq.volts(first, second);
      if (v > minVolts) eq.addBranch(first, second, watts / v, -watts / (v * v));
      else eq.addBranch(first, second, floorSiemens * v, floorSiemens);
    },
    settle: (eq) => {
      const v = eq.volts(first, second);
      return v > minVolts ? watts / v : floorSiemens * v;
    },
  };
}
