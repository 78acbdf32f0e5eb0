import type { Source } from '../findings.ts';
import { TOUCH_LIMIT_VOLTS } from '../parts/stored-charge.ts';

/** A limit, in SI units, and the document it is read in. */
export interface Limit {
  readonly value: number;
  readonly source: Source;
}

const es1: Source = { id: 'iec-62368-1', at: 'tables 4 and 5, class 1 energy sources' };

/** Voltages that an ordinary person may touch dry (class 1): DC, RMS and peak. */
export const TOUCH_DC_VOLTS: Limit = { value: TOUCH_LIMIT_VOLTS, source: es1 };
export const TOUCH_RMS_VOLTS: Limit = { value: 30, source: es1 };
export const TOUCH_PEAK_VOLTS: Limit = { value: 42.4, source: es1 };

/** Alternating current through a hand that touches (class 1), RMS. */
export const TOUCH_RMS_AMPS: Limit = { value: 0.5e-3, source: es1 };

/** The stricter limit for an accessible part that is not tied to protective earth. */
export const UNEARTHED_TOUCH_RMS_AMPS: Limit = { value: 0.25e-3, source: { id: 'iec-60950-1', at: 'accessible part not connected to protective earth' } };

/** The limit for audio apparatus that many test houses still print, as a peak, measured with the network of IEC 60990. */
export const AUDIO_TOUCH_PEAK_AMPS: Limit = { value: 0.7e-3, source: { id: 'iec-60065', at: 'touch current, network of IEC 60990' } };

/** A protective bond is at most this, its lead apart. */
export const PROTECTIVE_BOND_OHMS: Limit = { value: 0.1, source: { id: 'iec-60950-1', at: 'protective bonding' } };

/** Winding temperature in service for old enamel and paper (class A), and in a fault. */
export const WINDING_SERVICE_CELSIUS: Limit = { value: 100, source: { id: 'iec-61558-1', at: 'service, class A' } };
export const WINDING_FAULT_CELSIUS: Limit = { value: 200, source: { id: 'iec-61558-1', at: 'overload and short-circuit, class A' } };

/** What a hand from the rail to the chassis is taken to be: 1.5 kΩ of skin bridged by 0.22 µF, behind 500 Ω of body. */
export const HAND = { skinOhms: 1500, skinFarads: 0.22e-6, bodyOhms: 500, source: { id: 'iec-60990', at: 'figure 3' } } as const;

/** A usual digital multimeter on a voltage range. */
export const METER_OHMS = 10e6;

/** A breakdown that limits little, when nobody states one. Assumed. */
export const BREAKDOWN_OHMS = 1e3;

/** Currents to the chassis below this are leakage, not a second ground at work. */
export const FAULT_AMPS = 1e-3;
