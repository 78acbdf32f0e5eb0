import type { Device } from './device.ts';
import type { SwitchElement } from './elements.ts';

/** Resistance of a closed contact when none is given. */
export const CONTACT_OHMS = 1e-3;

/** A contact: a held branch with its contact resistance when closed, no current when open. */
export function switchDevice(element: SwitchElement, [first, second]: readonly [number, number]): Device {
  const { name, ohms = CONTACT_OHMS, closesAt, opensAt } = element;
  let closed = element.closed;
  const times = [closesAt, opensAt].filter((t) => t !== undefined);
  const device: Device = {
    name, first, second,
    needsBranch: true,
    branch: -1,
    connects: () => closed,
    stamp: (eq) => eq.addConstrained(first, second, device.branch as number, 0, ohms, !closed),
    settle: (eq) => eq.unknowns[device.branch as number] as number,
    corners: (from, to) => times.filter((t) => t > from && t <= to),
    changeOver: (seconds) => {
      const before = closed;
      if (closesAt !== undefined && seconds === closesAt) closed = true;
      if (opensAt !== undefined && seconds === opensAt) closed = false;
      return closed !== before;
    },
  };
  return device;
}
