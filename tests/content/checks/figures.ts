import type { Passage } from './prose.ts';

const NUMBER = String.raw`[±−-]?\d[\d.,\u202F]*`;
const SYMBOLS = String.raw`[pnµmkM]?(?:VA|V|A|Ω|F|H|Hz|W|J|s|m)|°C|°|K\/W|K|A²s|dB|min|h|%`;
const WORDS = String.raw`(?:milli|micro|kilo|mega)?(?:volts?|amps?|amperes?|ohms?|farads?|hertz|watts?|joules?|metres?|seconds?)|minutes?|hours?|degrees?|kelvin|per ?cent|times`;
const NAMES = 'two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty|fifty|sixty|hundred|thousand';

const TYPED = new RegExp(
  String.raw`(?<![\p{L}\p{N}▢.])(?:${NUMBER}(?:\s?(?:to|or|–|-)\s?${NUMBER})?(?:[\s\u00A0-](?:${SYMBOLS}|${WORDS})|(?:${SYMBOLS}))|\d[\d.,]*\s?×|(?:${NAMES})[\s-](?:${WORDS}))(?![\p{L}\p{N}])`,
  'giu',
);

/**
 * Figures that an author typed: a number, in digits or as a word, with a unit. A part's name (7812, 1N4001) is none,
 * and neither is a count without a unit.
 */
export const typedFigures = (text: string): string[] => [...text.matchAll(TYPED)].map(([figure]) => figure.trim());

/** A figure hidden in an expression as a text of its own. */
const figureInExpression = (expression: string): string[] =>
  [...expression.matchAll(/(['"`])((?:(?!\1).)*\d(?:(?!\1).)*)\1/g)].map((match) => match[2] ?? '').filter((text) => !/^[\w-]*[a-z][\w-]*$/i.test(text));

/**
 * Figures of a passage that rest on nothing: neither computed when the site is built nor in a passage that cites a
 * source. What the shop gives (its mains, its rail) is put in from its data, so it is never typed either.
 */
export const restlessFigures = (passage: Passage): string[] => [
  ...(passage.sources.length > 0 ? [] : typedFigures(passage.text)),
  ...passage.expressions.flatMap(figureInExpression),
];
