import { LEDS } from '../../compute/parts/led.ts';
import { OPTOCOUPLERS } from '../../compute/parts/optocoupler.ts';
import type { FieldSet, ValuesOf } from '../shared/definition.ts';

export const fields = {
  what: {
    kind: 'choice', label: 'What is fed through the resistor',
    options: [{ value: 'led', label: 'an LED or a string' }, { value: 'coil', label: 'relay coils' }, { value: 'optocoupler', label: 'an optocoupler' }],
    default: 'led',
  },
  feed: { kind: 'choice', label: 'Fed from', options: [{ value: 'dc', label: 'a DC rail' }, { value: 'ac', label: 'a winding, AC' }], default: 'dc' },
  railVolts: { kind: 'quantity', label: 'Rail', unit: 'V', default: 12, min: 1.5, max: 60, stepping: 1 },
  railSpread: { kind: 'quantity', label: 'Rail, give or take', unit: '%', default: 0.05, min: 0, max: 0.4, stepping: 0.01, hint: 'a fixed regulator holds 5 %' },
  windingVolts: { kind: 'quantity', label: 'Winding', unit: 'V', default: 6.3, min: 1.5, max: 40, stepping: 0.1, hint: 'RMS' },
  mainsSpread: { kind: 'quantity', label: 'Mains, give or take', unit: '%', default: 0.1, min: 0, max: 0.2, stepping: 0.01 },
  colour: { kind: 'choice', label: 'Colour', options: LEDS.map(({ id, name }) => ({ value: id, label: name.toLowerCase() })), default: 'green' },
  inSeries: { kind: 'quantity', label: 'LEDs in series', unit: '', default: 1, min: 1, max: 20, whole: true, stepping: 1 },
  strings: { kind: 'quantity', label: 'Strings, each with a resistor of its own', unit: '', default: 1, min: 1, max: 20, whole: true, stepping: 1 },
  amps: { kind: 'quantity', label: 'Current of each string', unit: 'A', default: 0.01, min: 2e-4, max: 0.1, assume: 'mA', stepping: 'e12', hint: 'the mean, on AC' },
  across: { kind: 'choice', label: 'Across the LED', options: [{ value: 'nothing', label: 'nothing' }, { value: 'diode', label: 'a diode the other way round' }], default: 'nothing' },
  coilVolts: { kind: 'quantity', label: 'Coil, rated volts', unit: 'V', default: 5, min: 3, max: 48, stepping: 1 },
  coilOhms: { kind: 'quantity', label: 'Coil resistance', unit: 'Ω', default: 62.5, min: 5, max: 20_000, stepping: 'e12', hint: 'at room temperature' },
  coils: { kind: 'quantity', label: 'Coils behind the one resistor', unit: '', default: 1, min: 1, max: 10, whole: true, stepping: 1 },
  part: { kind: 'choice', label: 'Optocoupler', options: OPTOCOUPLERS.map(({ id, name }) => ({ value: id, label: name })), default: '817a' },
  ledAmps: { kind: 'quantity', label: 'Current of its LED', unit: 'A', default: 0.005, min: 2e-4, max: 0.05, assume: 'mA', stepping: 'e12' },
  pullUpVolts: { kind: 'quantity', label: 'Rail that its output pulls down', unit: 'V', default: 12, min: 1, max: 60, stepping: 1 },
  pullUpOhms: { kind: 'quantity', label: 'Resistance to that rail', unit: 'Ω', default: 10_000, min: 50, max: 1e6, stepping: 'e12', hint: 'a pull-up, or a coil' },
  fittedOhms: { kind: 'quantity', label: 'Resistor fitted', unit: 'Ω', min: 1, max: 1e6, optional: true, blank: 'a preferred value', stepping: 'e12' },
  fittedWatts: { kind: 'quantity', label: 'Rating of the resistor fitted', unit: 'W', min: 0.05, max: 25, optional: true, blank: 'what it takes', stepping: '1-2-5' },
  airCelsius: { kind: 'quantity', label: 'Air about the resistor', unit: '°C', default: 55, min: -10, max: 100, stepping: 5 },
} as const satisfies FieldSet;

export type Values = ValuesOf<typeof fields>;
