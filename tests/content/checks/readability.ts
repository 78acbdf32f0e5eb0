import { wordsIn } from './prose.ts';

/** Sentences of a text. A point inside a number or before a small letter ends none. */
const sentencesOf = (text: string): string[] =>
  text
    .split(/(?<=[.!?:;]["”’)]?)\s+(?=["“‘(]?[\p{Lu}\p{N}▢])/u)
    .map((sentence) => sentence.trim())
    .filter((sentence) => sentence !== '');

export interface Readability {
  /** Björnsson's LIX: mean words in a sentence plus the percentage of words over six letters. 30 easy, 40 a newspaper, 50 hard, 60 a law. */
  readonly lix: number;
  readonly longestSentence: { readonly words: number; readonly text: string };
}

/** How hard a text is, from its passages; computed figures count as short words. */
export function readability(passages: readonly string[]): Readability {
  const sentences = passages.flatMap(sentencesOf);
  const words = sentences.flatMap(wordsIn);
  const long = words.filter((word) => word.replace(/[^\p{L}]/gu, '').length > 6).length;
  const lix = words.length / sentences.length + (100 * long) / words.length;
  const longest = sentences.reduce((a, b) => (wordsIn(b).length > wordsIn(a).length ? b : a), '');
  return { lix, longestSentence: { words: wordsIn(longest).length, text: longest } };
}
