import { releaseCoil } from '../../src/compute/in-time/coil-release.ts';
import { stepRail } from '../../src/compute/in-time/rail-step.ts';
import { switchOn } from '../../src/compute/in-time/switch-on.ts';
import { heaterModel } from '../../src/compute/parts/heater.ts';
import { BARE, COIL, RELAYS, TWELVE_VOLT } from '../compute/in-time/supplies.ts';
import type { BenchCase } from './measure.ts';

const supply = { ...BARE, winding: { openCircuitVolts: 16, ohms: 1.2 }, regulator: TWELVE_VOLT };

/** Asked for by a button or after the last keystroke: a tenth of a second or two is soon enough, from a worker. */
export const cases: readonly BenchCase[] = [
  { name: 'switch-on: relays', run: () => switchOn({ supply, load: RELAYS }) },
  { name: 'switch-on: relays and cold heaters, to warm', run: () => switchOn({ supply, load: { ...RELAYS, heater: heaterModel({ volts: 12.6, amps: 0.3 }) } }) },
  { name: 'a second relay on a regulated rail', run: () => stepRail({ supply, load: RELAYS, step: { kind: 'coil', coil: COIL } }) },
  { name: 'coil release, diode and zener', run: () => releaseCoil({ henries: 2.29, ohms: 275, railVolts: 12, suppression: { kind: 'diode-zener', volts: 12 } }) },
];
