import { RELAY_KINDS } from '../../compute/parts/relay.ts';
import type { FieldSet } from '../shared/definition.ts';

export const fields = {
  kind: { kind: 'choice', label: 'Kind of relay', options: RELAY_KINDS.map(({ id, name }) => ({ value: id, label: name })), default: 'power-400' },
  ratedVolts: { kind: 'quantity', label: 'Coil, rated volts', unit: 'V', default: 12, min: 3, max: 60, stepping: 1 },
  ohms: { kind: 'quantity', label: 'Coil resistance', unit: 'Ω', min: 5, max: 50_000, optional: true, blank: 'its kind’s ohms', stepping: 'e12', hint: 'at room temperature' },
  pullIn: { kind: 'quantity', label: 'Sure to pull in from', unit: '%', min: 0.3, max: 0.95, optional: true, blank: 'its kind’s share', stepping: 0.01, hint: 'of rated volts, cold' },
  lowestVolts: { kind: 'quantity', label: 'Rail, at its lowest', unit: 'V', default: 11.4, min: 2, max: 80, stepping: 0.5, hint: 'the valley, where nothing regulates it' },
  highestVolts: { kind: 'quantity', label: 'Rail, at its highest', unit: 'V', default: 12.6, min: 2, max: 80, stepping: 0.5 },
  seriesOhms: { kind: 'quantity', label: 'Resistor in series with the coil', unit: 'Ω', min: 1, max: 50_000, optional: true, blank: 'no resistor', stepping: 'e12' },
  switchedBy: {
    kind: 'choice', label: 'What switches the coil',
    options: [{ value: 'transistor', label: 'a transistor' }, { value: 'contact', label: 'a switch or footswitch' }], default: 'transistor',
  },
  dropVolts: { kind: 'quantity', label: 'Drop of what switches it', unit: 'V', default: 0.1, min: 0, max: 5, stepping: 0.1, hint: 'about 0.1 V for a small transistor, 1 V for a Darlington' },
  driverVolts: { kind: 'quantity', label: 'Rating of what switches it', unit: 'V', default: 45, min: 5, max: 600, stepping: 5 },
  suppression: {
    kind: 'choice', label: 'Across the coil',
    options: [
      { value: 'diode', label: 'a diode' }, { value: 'diode-zener', label: 'a diode and a zener' }, { value: 'resistor', label: 'a resistor' }, { value: 'none', label: 'nothing' },
    ],
    default: 'diode',
  },
  zenerVolts: { kind: 'quantity', label: 'Zener', unit: 'V', default: 12, min: 2.4, max: 100, stepping: 'e12' },
  acrossOhms: { kind: 'quantity', label: 'Resistor across the coil', unit: 'Ω', default: 680, min: 10, max: 20_000, stepping: 'e12' },
  wantedSeconds: { kind: 'quantity', label: 'Must have let go within', unit: 's', default: 0.03, min: 0.001, max: 1, assume: 'ms', stepping: '1-2-5' },
  airCelsius: { kind: 'quantity', label: 'Air about the relay', unit: '°C', default: 55, min: -10, max: 100, stepping: 5 },
  contactsAt: {
    kind: 'choice', label: 'What its contacts switch',
    options: [
      { value: 'signal', label: 'signals' }, { value: 'high', label: 'a point on the high voltage' }, { value: 'anode', label: 'an output valve’s anode' },
    ],
    default: 'signal',
  },
  signalVolts: { kind: 'quantity', label: 'Most volts on the contacts', unit: 'V', default: 5, min: 0, max: 1000, stepping: 5, hint: 'DC and peak, with the coupling capacitors leaking' },
  highVolts: { kind: 'quantity', label: 'B+ of the amp', unit: 'V', default: 420, min: 50, max: 1000, stepping: 10, hint: 'unloaded, at high mains' },
  moved: {
    kind: 'choice', label: 'When they move', options: [{ value: 'dead', label: 'only with the amp off' }, { value: 'live', label: 'while the amp plays' }], default: 'dead',
  },
  insulation: {
    kind: 'choice', label: 'Coil-to-contact insulation, as printed',
    options: [
      { value: 'test', label: 'a test voltage only' }, { value: 'unknown', label: 'not read' }, { value: 'basic', label: 'basic' }, { value: 'reinforced', label: 'reinforced' },
    ],
    default: 'test',
  },
  insulationVolts: { kind: 'quantity', label: 'Working voltage of that insulation', unit: 'V', default: 250, min: 10, max: 2000, stepping: 50 },
  rail: {
    kind: 'choice', label: 'Where the rail goes', options: [{ value: 'inside', label: 'stays inside' }, { value: 'outside', label: 'reaches a jack or a panel' }], default: 'inside',
  },
} as const satisfies FieldSet;

/** What others need to lead here: everything but the solver. */
export const coilCheckFace = { id: 'coil-check', version: 1, question: 'Will this relay pull in when hot at the lowest rail, and let go fast enough?', fields } as const;
