import type { ConverterRow } from '../parts/converter.ts';
import type { ChainStage } from './chain-types.ts';
import type { ConverterStart } from './converter-start.ts';

/** A converter feeding the rail, by itself or through a regulator, at its worst corners. */
export interface ConverterSolution {
  /** The catalogue's row with what was read on the part in hand. */
  readonly part: ConverterRow;
  /** Regulator behind it; `none` when its output is the rail. */
  readonly stage: ChainStage;
  /** Amps out of the converter in each state of the load. */
  readonly loadAmps: { readonly off: number; readonly running: number; readonly everything: number };
  /** What it may give in the chassis air. */
  readonly derated: { readonly share: number; readonly amps: number };
  /** Most load over that; Infinity when it may give nothing. */
  readonly loadingRatio: number;
  /** Lowest and highest the rail can stand, tolerance and ripple included. */
  readonly railMinVolts: number;
  readonly railMaxVolts: number;
  /** Lowest output less what the regulator needs; undefined without one. */
  readonly headroomVolts: number | undefined;
  /** Heat in the module and in the regulator with everything on. */
  readonly moduleWatts: number;
  readonly regulatorWatts: number;
  readonly junctionCelsius: number | undefined;
  readonly start: ConverterStart;
  /** Through its Y capacitor into whatever its output meets, at high mains, RMS. */
  readonly leakageAmps: number;
  /** Where its output floats when nothing holds it: half the mains at high mains, RMS, behind that leakage. */
  readonly floatingVolts: number;
}
