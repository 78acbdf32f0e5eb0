import { preferredValues, type PreferredSeries } from '../../compute/quantity.ts';
import type { QuantityField, Stepping } from './definition.ts';

const ladderOf = (stepping: Exclude<Stepping, number>): readonly number[] =>
  stepping === '1-2-5' ? [1, 2, 5] : preferredValues(stepping.toUpperCase() as PreferredSeries);

/** The rungs of a ladder around a positive value, ascending, one decade to either side. */
const rungs = (value: number, ladder: readonly number[]): number[] => {
  const decade = Math.floor(Math.log10(value));
  return [decade - 1, decade, decade + 1].flatMap((power) => ladder.map((rung) => Number(`${rung}e${power}`)));
};

/** A thousandth part of a rung: closer than that, a value stands on it. */
const ON = 1e-3;

/** A fixed step that suits a range in which no preferred values exist: about a fortieth of it, as 1, 2 or 5. */
export function usualStep({ min, max }: { readonly min: number; readonly max: number }): number {
  const wanted = (max - min) / 40;
  const decade = 10 ** Math.floor(Math.log10(wanted));
  return [1, 2, 5, 10].map((rung) => rung * decade).find((step) => step >= wanted * 0.99) ?? wanted;
}

/** The next value up or down from here, within the field's limits. */
export function stepFrom(field: Pick<QuantityField, 'min' | 'max' | 'stepping'>, value: number, direction: 1 | -1): number {
  const stepping = field.stepping ?? usualStep(field);
  const clamp = (next: number): number => Math.min(field.max, Math.max(field.min, next));
  if (typeof stepping === 'number') {
    // To the next whole step, so that 13.7 V goes to 14 V and not to 14.7 V; rounded to drop the binary error.
    const count = value / stepping;
    const next = direction > 0 ? Math.floor(count + ON) + 1 : Math.ceil(count - ON) - 1;
    return clamp(Number((next * stepping).toPrecision(12)));
  }
  if (value <= 0) return clamp(direction > 0 ? field.min : value);
  const around = rungs(value, ladderOf(stepping));
  const next =
    direction > 0 ? around.find((rung) => rung > value * (1 + ON)) : around.findLast((rung) => rung < value * (1 - ON));
  return clamp(next ?? value);
}

/** Positions of a slider. */
export const SLIDER_STEPS = 400;

/** Largest over smallest value of a slider that starts at zero: its first position is zero itself. */
const ZERO_SPAN = 500;

/** Whether a slider goes by ratio, and from where: a range of more than thirty to one would crowd at its foot otherwise. */
function ratioFoot({ min, max }: { readonly min: number; readonly max: number }): number | undefined {
  if (min === 0) return max / ZERO_SPAN;
  return min > 0 && max / min > 30 ? min : undefined;
}

/** Where a value stands on a slider of `SLIDER_STEPS` positions. */
export function sliderPosition(field: Pick<QuantityField, 'min' | 'max'>, value: number): number {
  const { min, max } = field;
  const foot = ratioFoot(field);
  if (min === 0 && value <= 0) return 0;
  const held = Math.min(max, Math.max(foot ?? min, value));
  const part = foot === undefined ? (held - min) / (max - min) : Math.log(held / foot) / Math.log(max / foot);
  return Math.max(min === 0 ? 1 : 0, Math.round(part * SLIDER_STEPS));
}

/** The value at a slider's position, to three digits: more would only flicker. */
export function sliderValue(field: Pick<QuantityField, 'min' | 'max'>, position: number): number {
  const { min, max } = field;
  if (position <= 0) return min;
  const part = Math.min(1, position / SLIDER_STEPS);
  const foot = ratioFoot(field);
  const value = foot === undefined ? min + (max - min) * part : foot * (max / foot) ** part;
  return Math.min(max, Math.max(min, Number(value.toPrecision(3))));
}
