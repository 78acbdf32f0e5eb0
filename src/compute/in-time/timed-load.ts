import { requireNumber } from '../errors.ts';
import { GROUND } from '../network/elements.ts';
import type { Element } from '../network/elements.ts';
import { heaterOhms } from '../parts/heater.ts';
import type { HeaterModel } from '../parts/heater.ts';
import { COIL_REFERENCE_CELSIUS, coilHenries, coilOhms } from '../parts/relay.ts';
import type { RelayCoil } from '../parts/relay.ts';

/** Equal relay coils that are switched together. */
export interface TimedCoil {
  readonly name: string;
  readonly count: number;
  /** One coil, at the copper temperature of the moment. */
  readonly ohms: number;
  readonly henries: number;
  /** Current that is sure to pull the armature in. */
  readonly operateAmps: number;
}

/** What hangs on the rail, as it acts in time. */
export interface TimedLoad {
  /** Volts at which `amps` is stated. */
  readonly railVolts: number;
  /** Everything that follows the rail like a resistor: indicators, logic. */
  readonly amps: number;
  /** Cold at the start. */
  readonly heater?: HeaterModel;
  /** Connected from the start. */
  readonly coils?: readonly TimedCoil[];
}

/**
 * A catalogue coil as it acts in time at a copper temperature (23 °C when left out): inductance with the armature out,
 * since it has yet to move, and the current of the guaranteed pull-in, which does not change with temperature.
 */
export function timedCoil(options: { readonly coil: RelayCoil; readonly count: number; readonly celsius?: number }): TimedCoil {
  const { coil, count, celsius = COIL_REFERENCE_CELSIUS } = options;
  return {
    name: coil.name,
    count: requireNumber('count', count, { min: 1, max: 100 }),
    ohms: coilOhms({ coil, celsius }).typical,
    henries: coilHenries(coil).released,
    operateAmps: (coil.mustOperateRatio * coil.ratedVolts) / coil.ohms,
  };
}

/** Element names of the coils, in their order. */
export const coilElement = (at: number): string => `coil ${at + 1}`;

/** The load between a node and ground, as elements; heaters start cold. */
export function loadElements(load: TimedLoad, rail: string): Element[] {
  const between = [rail, GROUND] as const;
  const elements: Element[] = [];
  if (load.amps > 0) elements.push({ kind: 'resistor', name: 'steady load', between, ohms: load.railVolts / load.amps });
  if (load.heater !== undefined) {
    const { heater } = load;
    const coldRatio = heaterOhms({ model: heater, kelvin: heater.airKelvin }) / heater.hotOhms;
    elements.push({ kind: 'heater', name: 'heaters', between, hotVolts: heater.volts, hotAmps: heater.amps, coldRatio, warmUpSeconds: heaterWarmUpSeconds(heater) });
  }
  (load.coils ?? []).forEach((coil, at) => {
    elements.push({ kind: 'inductor', name: coilElement(at), between, henries: coil.henries / coil.count, ohms: coil.ohms / coil.count });
  });
  return elements;
}

/** Time in which a model at its rated volts comes to nine tenths of its hot resistance: its heat content says it. */
function heaterWarmUpSeconds(heater: HeaterModel): number {
  const { volts, amps, hotKelvin, airKelvin, exponent, joulesPerKelvin } = heater;
  const air = airKelvin / hotKelvin;
  const end = 0.9 ** (1 / exponent);
  const steps = 400;
  const width = (end - air) / steps;
  let units = 0;
  for (let step = 0; step < steps; step += 1) {
    const share = air + (step + 0.5) * width;
    units += width / (share ** -exponent - (share ** 4 - air ** 4) / (1 - air ** 4));
  }
  return (units * joulesPerKelvin * hotKelvin) / (volts * amps);
}

/** Conductance of the load once the coils' currents have come up, with the heaters at `kelvin` (their own hot temperature when left out). */
export function loadSiemens(load: TimedLoad, kelvin?: number): number {
  const coils = (load.coils ?? []).reduce((sum, { count, ohms }) => sum + count / ohms, 0);
  const heater = load.heater === undefined ? 0 : 1 / heaterOhms({ model: load.heater, kelvin: kelvin ?? load.heater.hotKelvin });
  return load.amps / load.railVolts + coils + heater;
}

/** Throws `InputError` for a load out of range. */
export function checkTimedLoad(load: TimedLoad): void {
  requireNumber('load.railVolts', load.railVolts, { min: 0.5, max: 500 });
  requireNumber('load.amps', load.amps, { min: 0, max: 50 });
  for (const coil of load.coils ?? []) {
    requireNumber('coil.count', coil.count, { min: 1, max: 100 });
    requireNumber('coil.ohms', coil.ohms, { min: 1, max: 1e6 });
    requireNumber('coil.henries', coil.henries, { min: 1e-6, max: 100 });
    requireNumber('coil.operateAmps', coil.operateAmps, { min: 1e-5, max: 10 });
  }
}
