import { headroom } from './headroom/state.ts';

/** Every calculator that is built, in the order of a job. Its island stands in components/Calculator.astro. */
export const CALCULATORS = [headroom] as const;

export type CalculatorName = (typeof CALCULATORS)[number]['id'];
