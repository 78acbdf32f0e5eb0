import { InputError, SolveError } from '../../../src/compute/errors.ts';
import { defineCalculator, type FieldSet } from '../../../src/widgets/shared/definition.ts';

export const fields = {
  inputVolts: { kind: 'quantity', label: 'Input', unit: 'V', default: 12, min: 1, max: 100, stepping: 0.5 },
  topOhms: { kind: 'quantity', label: 'Upper resistor', unit: 'Ω', default: 4700, min: 1, max: 1e6, stepping: 'e12' },
  kind: {
    kind: 'choice',
    label: 'Kind',
    options: [{ value: 'plain', label: 'plain' }, { value: 'loaded', label: 'loaded' }],
    default: 'plain',
  },
  ratedWatts: { kind: 'quantity', label: 'Rating', unit: 'W', min: 0.01, max: 10, optional: true },
  note: { kind: 'text', label: 'Note', default: '', maxLength: 40 },
  loads: {
    kind: 'rows',
    label: 'Loads',
    noun: 'load',
    row: {
      name: { kind: 'text', label: 'Name', default: 'Lamp', maxLength: 20 },
      amps: { kind: 'quantity', label: 'Current', unit: 'A', default: 0.01, min: 0.001, max: 1, assume: 'mA' },
    },
    default: [{ name: 'Relay', amps: 0.033 }, {}],
    min: 0,
    max: 4,
  },
} as const satisfies FieldSet;

/** A small calculator for the tests of the kit: it has a field of every kind, and every way to fail. */
export const divider = defineCalculator({
  id: 'divider',
  version: 2,
  question: 'What comes out of the middle?',
  fields,
  quantities: { 'top.ohms': 'topOhms' },
  solve: (values) => {
    if (values.topOhms === 666) throw new InputError('top.ohms', values.topOhms, { max: 500 });
    if (values.topOhms === 777) throw new InputError('elsewhere', values.topOhms, { min: 1, max: 2 });
    if (values.topOhms === 888) throw new SolveError('overloaded', 'the load takes more than there is.');
    const amps = values.loads.reduce((sum, load) => sum + load.amps, 0);
    const volts = values.inputVolts - amps * values.topOhms;
    return { level: volts > 0 ? ('within' as const) : ('outside' as const), summary: `${volts} V`, volts, rated: values.ratedWatts };
  },
});
