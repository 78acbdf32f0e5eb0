import { accepted, refused } from './problem.ts';
import type { Outcome } from './problem.ts';

/** What text from outside may hold at most. */
export interface TextLimits {
  readonly characters: number;
  /** Levels of objects and lists inside one another. */
  readonly depth: number;
  /** Objects, lists and single values together. */
  readonly values: number;
}

/** A file of every plan of a busy shop is a few hundred kilobytes; these are an order of magnitude above. */
export const FILE_LIMITS: TextLimits = { characters: 4_000_000, depth: 32, values: 500_000 };

/** A link holds one plan. */
export const LINK_LIMITS: TextLimits = { characters: 256_000, depth: 32, values: 20_000 };

/**
 * Names that reach an object's prototype or replace what every object answers to. No field of ours has one, so a
 * text that holds one was made to do harm, and is refused rather than cleaned.
 */
const isForbidden = (name: string): boolean => name in Object.prototype || name === 'prototype';

/** The character at which the brackets of `text` first go deeper than `depth`, or -1. Runs before parsing. */
function tooDeepAt(text: string, depth: number): number {
  let level = 0;
  let inString = false;
  for (let index = 0; index < text.length; index += 1) {
    const character = text[index];
    if (inString) {
      if (character === '\\') index += 1;
      else if (character === '"') inString = false;
    } else if (character === '"') inString = true;
    else if (character === '{' || character === '[') {
      level += 1;
      if (level > depth) return index;
    } else if (character === '}' || character === ']') level -= 1;
  }
  return -1;
}

const placeOf = (parent: string, key: string | number): string => (parent === '' ? String(key) : `${parent}.${key}`);

/** Walks without recursion: the first forbidden name, or too many values. */
function inspect(root: unknown, limits: TextLimits): Outcome<unknown> {
  const waiting: { readonly place: string; readonly value: unknown }[] = [{ place: '', value: root }];
  let count = 0;
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    count += 1;
    if (count > limits.values) return refused('too-large', '', `This holds more than ${limits.values} values; nothing was read.`);
    const { place, value } = next;
    if (Array.isArray(value)) {
      value.forEach((entry: unknown, index) => waiting.push({ place: placeOf(place, index), value: entry }));
    } else if (typeof value === 'object' && value !== null) {
      for (const [name, entry] of Object.entries(value)) {
        const at = placeOf(place, name.slice(0, 60));
        if (isForbidden(name)) return refused('invalid', at, `${at}: a field of this name is never part of a plan or a record; nothing was read.`);
        waiting.push({ place: at, value: entry });
      }
    }
  }
  return accepted(root);
}

/**
 * Parses JSON text that came from outside, within limits. Gives the parsed value, in which no object holds a name
 * that could reach a prototype; its fields still have to be read one by one. Never throws.
 */
export function parseUntrusted(text: string, limits: TextLimits): Outcome<unknown> {
  if (text.length > limits.characters) {
    return refused('too-large', '', `This is larger than ${limits.characters.toLocaleString('en-GB')} characters; nothing was read.`);
  }
  const deep = tooDeepAt(text, limits.depth);
  if (deep >= 0) return refused('too-deep', `character ${deep + 1}`, `At character ${deep + 1} this is nested deeper than ${limits.depth} levels; nothing was read.`);
  let value: unknown;
  try {
    // Some editors save a byte order mark in front; JSON has no place for it.
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    const said = error instanceof Error ? error.message : '';
    const at = /position (\d+)/.exec(said)?.[1];
    const place = at === undefined ? '' : `character ${Number(at) + 1}`;
    return refused('not-json', place, `This is not a whole JSON text (${said || 'it cannot be parsed'}); nothing was read.`);
  }
  return inspect(value, limits);
}
