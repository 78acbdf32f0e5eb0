import type { RectifierOptions } from '../../../src/compute/index.ts';

type Diode = RectifierOptions['diode'];

/** Parameter sets that the reference figures were computed with (typical curves, VT = 25.852 mV). */
export const N400X: Diode = { saturationAmps: 4.64e-9, emission: 1.7529, ohms: 0.0355 };
export const N540X: Diode = { saturationAmps: 1.46e-7, emission: 1.9517, ohms: 0.009 };
export const BRIDGE_4A: Diode = { saturationAmps: 1.95e-7, emission: 2.0511, ohms: 0.016 };
export const N5819: Diode = { saturationAmps: 1.88e-6, emission: 0.9937, ohms: 0.084 };
export const N5822: Diode = { saturationAmps: 1.39e-5, emission: 1.0315, ohms: 0.0384 };
