import { InputError, requireNumber } from '../errors.ts';
import type { AllowedRange } from '../errors.ts';
import type { Element } from './elements.ts';

const KINDS = [
  'resistor', 'capacitor', 'inductor', 'sine', 'dc', 'current', 'diode', 'switch', 'load', 'regulator', 'heater', 'behaviour',
];

const OHMS: AllowedRange = { min: 0, max: 1e12 };

/** Throws `InputError`, naming the element and the quantity, for the first value out of range. */
export function checkElement(element: Element): void {
  const { name, between, kind } = element;
  if (typeof name !== 'string' || name === '') throw new InputError('name', name, { expected: 'a name for each element' });
  if (!KINDS.includes(kind)) throw new InputError(`${name}.kind`, kind, { expected: KINDS.join(', ') });
  if (!Array.isArray(between) || between.length !== 2 || between.some((n) => typeof n !== 'string' || n === '')) {
    throw new InputError(`${name}.between`, between, { expected: 'two node names' });
  }
  const need = (key: string, value: unknown, range: AllowedRange): void => {
    requireNumber(`${name}.${key}`, value, range);
  };
  const may = (key: string, value: unknown, range: AllowedRange): void => {
    if (value !== undefined) need(key, value, range);
  };
  switch (element.kind) {
    case 'resistor':
      need('ohms', element.ohms, OHMS);
      break;
    case 'capacitor':
      need('farads', element.farads, { min: 1e-12, max: 100 });
      may('ohms', element.ohms, OHMS);
      may('initialVolts', element.initialVolts, { min: -1e5, max: 1e5 });
      break;
    case 'inductor':
      need('henries', element.henries, { min: 1e-9, max: 1e4 });
      may('ohms', element.ohms, OHMS);
      may('initialAmps', element.initialAmps, { min: -1e4, max: 1e4 });
      break;
    case 'sine':
      need('peakVolts', element.peakVolts, { min: -1e5, max: 1e5 });
      may('degrees', element.degrees, { min: -3600, max: 3600 });
      may('ohms', element.ohms, OHMS);
      may('harmonic', element.harmonic, { min: 1, max: 100 });
      if (!Number.isInteger(element.harmonic ?? 1)) {
        throw new InputError(`${name}.harmonic`, element.harmonic, { expected: 'a whole number, 1 to 100' });
      }
      break;
    case 'dc':
      need('volts', element.volts, { min: -1e5, max: 1e5 });
      may('ohms', element.ohms, OHMS);
      break;
    case 'current':
      need('amps', element.amps, { min: -1e4, max: 1e4 });
      break;
    case 'diode':
      need('saturationAmps', element.saturationAmps, { min: 1e-18, max: 0.1 });
      need('emission', element.emission, { min: 0.01, max: 100 });
      may('ohms', element.ohms, { min: 0, max: 1e6 });
      may('breakdownVolts', element.breakdownVolts, { min: 0.5, max: 1e5 });
      break;
    case 'switch':
      if (typeof element.closed !== 'boolean') {
        throw new InputError(`${name}.closed`, element.closed, { expected: 'true or false' });
      }
      may('ohms', element.ohms, OHMS);
      may('closesAt', element.closesAt, { min: 0, max: 1e6 });
      may('opensAt', element.opensAt, { min: 0, max: 1e6 });
      break;
    case 'load':
      need('watts', element.watts, { min: 0, max: 1e5 });
      need('minVolts', element.minVolts, { min: 0.01, max: 1e5 });
      break;
    case 'regulator':
      if (typeof element.reference !== 'string' || element.reference === '') {
        throw new InputError(`${name}.reference`, element.reference, { expected: 'a node name' });
      }
      need('setVolts', element.setVolts, { min: 0.1, max: 1000 });
      may('outputOhms', element.outputOhms, { min: 1e-4, max: 1000 });
      need('dropoutVolts', element.dropoutVolts, { min: 0, max: 100 });
      may('dropoutOhms', element.dropoutOhms, { min: 1e-4, max: 1000 });
      if (element.limit) {
        need('limit.peakAmps', element.limit.peakAmps, { min: 1e-3, max: 1000 });
        need('limit.foldVolts', element.limit.foldVolts, { min: 0, max: 1000 });
        need('limit.foldedAmps', element.limit.foldedAmps, { min: 1e-3, max: element.limit.peakAmps });
        need('limit.foldedVolts', element.limit.foldedVolts, { min: element.limit.foldVolts + 0.01, max: 2000 });
      }
      break;
    case 'heater':
      need('hotVolts', element.hotVolts, { min: 0.1, max: 1000 });
      need('hotAmps', element.hotAmps, { min: 1e-3, max: 100 });
      need('coldRatio', element.coldRatio, { min: 0.05, max: 1 });
      need('warmUpSeconds', element.warmUpSeconds, { min: 0.01, max: 1000 });
      may('initialWarmth', element.initialWarmth, { min: 0, max: 1 });
      break;
    case 'behaviour':
      if (typeof element.amps !== 'function') {
        throw new InputError(`${name}.amps`, element.amps, { expected: 'a function of volts, seconds and state' });
      }
      if (!Array.isArray(element.initialState)) {
        throw new InputError(`${name}.initialState`, element.initialState, { expected: 'a list of numbers' });
      }
      element.initialState.forEach((v, k) => need(`initialState[${k}]`, v, {}));
  }
}
