import type { Device, LinearState } from './device.ts';
import type { CapacitorElement, CurrentElement, DcElement, InductorElement, ResistorElement } from './elements.ts';

type Ends = readonly [number, number];

/** An ideal wire at 0 Ω, a conductance otherwise. */
export function resistorDevice({ name, ohms }: ResistorElement, [first, second]: Ends): Device {
  if (ohms === 0) return heldDevice(name, [first, second], () => 0);
  const siemens = 1 / ohms;
  return {
    name, first, second,
    connects: () => true,
    stamp: (eq) => eq.addBranch(first, second, siemens * eq.volts(first, second), siemens),
    settle: (eq) => siemens * eq.volts(first, second),
  };
}

/** A branch held to a voltage, its current being an unknown. */
export function heldDevice(name: string, [first, second]: Ends, emf: (seconds: number) => number): Device {
  const device: Device = {
    name, first, second,
    needsBranch: true,
    branch: -1,
    connects: () => true,
    stamp: (eq) => eq.addConstrained(first, second, device.branch as number, emf(eq.seconds), 0, false),
    settle: (eq) => eq.unknowns[device.branch as number] as number,
  };
  return device;
}

/** A voltage behind a resistance. */
export function sourceDevice(name: string, ends: Ends, ohms: number, emf: (seconds: number) => number): Device {
  if (ohms === 0) return heldDevice(name, ends, emf);
  const [first, second] = ends;
  const siemens = 1 / ohms;
  return {
    name, first, second,
    connects: () => true,
    stamp: (eq) => eq.addBranch(first, second, siemens * (eq.volts(first, second) - emf(eq.seconds)), siemens),
    settle: (eq) => siemens * (eq.volts(first, second) - emf(eq.seconds)),
  };
}

export function dcDevice({ name, volts, ohms = 0 }: DcElement, ends: Ends): Device {
  return sourceDevice(name, ends, ohms, () => volts);
}

export function currentDevice({ name, amps }: CurrentElement, [first, second]: Ends): Device {
  return {
    name, first, second,
    // A current fixes no level: a part that hangs on current sources alone still floats.
    connects: () => false,
    stamp: (eq) => eq.addBranch(first, second, amps, 0),
    settle: () => amps,
  };
}

/** Voltage behind the series resistance is the state; its rate is current over capacitance. */
export function capacitorDevice({ name, farads, ohms = 0, initialVolts = 0 }: CapacitorElement, [first, second]: Ends): Device {
  const link: LinearState = { ampsByBase: 0, rateByVolts: 0, rateByBase: 0 };
  const device: Device = {
    name, first, second,
    initialStates: [initialVolts],
    state: -1,
    connects: () => true,
    stamp: (eq) => {
      // Within an implicit step the capacitor is its base voltage behind reach/C, plus its own series resistance.
      const siemens = 1 / (eq.reach / farads + ohms);
      const base = eq.bases[device.state as number] as number;
      eq.addBranch(first, second, siemens * (eq.volts(first, second) - base), siemens);
    },
    settle: (eq) => {
      const k = device.state as number;
      const amps = (eq.volts(first, second) - (eq.bases[k] as number)) / (eq.reach / farads + ohms);
      eq.rates[k] = amps / farads;
      return amps;
    },
    linearState: (eq) => {
      const siemens = 1 / (eq.reach / farads + ohms);
      link.ampsByBase = -siemens;
      link.rateByVolts = siemens / farads;
      link.rateByBase = -siemens / farads;
      return link;
    },
  };
  return device;
}

/** Current is the state; its rate is the voltage left after the winding's resistance, over inductance. */
export function inductorDevice({ name, henries, ohms = 0, initialAmps = 0 }: InductorElement, [first, second]: Ends): Device {
  const link: LinearState = { ampsByBase: 0, rateByVolts: 0, rateByBase: 0 };
  const device: Device = {
    name, first, second,
    initialStates: [initialAmps],
    state: -1,
    connects: () => true,
    stamp: (eq) => {
      const share = eq.reach / henries;
      const siemens = share / (1 + share * ohms);
      const base = (eq.bases[device.state as number] as number) / (1 + share * ohms);
      eq.addBranch(first, second, base + siemens * eq.volts(first, second), siemens);
    },
    settle: (eq) => {
      const k = device.state as number;
      const share = eq.reach / henries;
      const volts = eq.volts(first, second);
      const amps = ((eq.bases[k] as number) + share * volts) / (1 + share * ohms);
      eq.rates[k] = (volts - ohms * amps) / henries;
      return amps;
    },
    linearState: (eq) => {
      const share = eq.reach / henries;
      link.ampsByBase = 1 / (1 + share * ohms);
      link.rateByVolts = link.ampsByBase / henries;
      link.rateByBase = (-ohms * link.ampsByBase) / henries;
      return link;
    },
  };
  return device;
}
