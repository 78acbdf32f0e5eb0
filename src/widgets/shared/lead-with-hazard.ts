import type { Finding } from '../../compute/findings.ts';

const lower = (sentence: string): string => sentence.replace(/^(The|A|An|It|Its|Each|This|Nothing|With)\b/, (word) => word.toLowerCase()).replace(/\.$/, '');

/**
 * A summary that names the hazard before anything else: a verdict of `hazard` beside a sentence about something else would
 * be read past. Without a hazard the words stand as they are.
 */
export function leadWithHazard(findings: readonly Finding[], words: string): string {
  const hazards = findings.filter(({ level }) => level === 'hazard');
  const [first] = hazards;
  if (first === undefined) return words;
  const more = hazards.length === 1 ? '' : `, and ${hazards.length === 2 ? 'another hazard' : `${hazards.length - 1} more hazards`} below`;
  return `${lower(first.what)}${more}. Besides: ${words}`;
}
