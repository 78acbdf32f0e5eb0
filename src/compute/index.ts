/** The public face of the computation: everything a page, a widget or a script may use. */
export { InputError, SolveError } from './errors.ts';
export type { AllowedRange, SolveFailureReason } from './errors.ts';

export { solveRectifier } from './rectifier/solve-rectifier.ts';
export { CONDUCTION_FRACTION } from './rectifier/rectifier-types.ts';
export type {
  RectifierLoad,
  RectifierOptions,
  RectifierSolution,
  RectifierTopology,
  RectifierWaveform,
} from './rectifier/rectifier-types.ts';
