import { showQuantity } from '../shared/units.ts';

/** Less is left over from the arithmetic. */
const NO_AMPS = 1e-7;

/** A solved current: two digits are what such a solution is good for. */
export const showAmps = (value: number): string => (value < NO_AMPS ? '0\u00A0A' : showQuantity(value, 'A', 2));
