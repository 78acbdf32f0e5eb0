import { describe, expect, it } from 'vitest';
import { restlessFigures, typedFigures } from './checks/figures.ts';
import { glossaryFaults } from './checks/glossary-use.ts';
import { hazardsShown } from './checks/hazards.ts';
import { passagesOf, wordsIn } from './checks/prose.ts';
import { readability } from './checks/readability.ts';

const page = (body: string): string => `---\ntitle: A page\n---\n\n${body}\n`;
const loose = (body: string): string[] => passagesOf(page(body)).flatMap(restlessFigures);

describe('the check on figures', () => {
  it.each([
    ['a rail of 12 V', ['12 V']],
    ['a 12-volt rail', ['12-volt']],
    ['0.5 A at 60 Hz', ['0.5 A', '60 Hz']],
    ['1.5 to 3 times', ['1.5 to 3 times']],
    ['over ten amps', ['ten amps']],
    ['a tenth, ±10 %', ['±10 %']],
    ['70 °C and 9.5 K/W', ['70 °C', '9.5 K/W']],
  ])('sees a figure in “%s”', (text, found) => expect(typedFigures(text)).toEqual(found));

  it.each(['a 7812 and two 1N4001', 'lesson 7', 'IEC 60063', 'two relays', 'a 317-class part', 'a 12AX7', 'twice the frequency'])(
    'sees none in “%s”',
    (text) => expect(typedFigures(text)).toEqual([]),
  );

  it('passes a computed figure and a sourced one, and stops a typed one', () => {
    expect(loose('The rail reads {say.mean}.')).toEqual([]);
    expect(loose('The sheet prints 2 V.<Source id="ds-78xx" />')).toEqual([]);
    expect(loose('The rail reads 15.1 V.')).toEqual(['15.1 V']);
  });

  it('does not let a source in one paragraph cover another', () => {
    expect(loose('Prints 2 V.<Source id="ds-78xx" />\n\nReads 3 V.')).toEqual(['3 V']);
  });

  it('reads the text of hazards, steps and tables', () => {
    expect(loose('<Hazard id="a" harm="fire" title="Over 5 A" instead="less">\n\nMore than 6 A.\n\n</Hazard>')).toEqual(['5 A', '6 A']);
    expect(loose('<Step ask={`From ${say.a} to 7 V?`}>\n\nYes.\n\n</Step>')).toEqual(['7 V']);
    expect(loose('| a | b |\n|---|---|\n| {say.a} | 8 V |')).toEqual(['8 V']);
  });

  it('stops a figure that is dressed up as an expression', () => expect(loose("It reads {'15.1 V'}.")).toEqual(['15.1 V']));

  it('gives the line', () => expect(passagesOf(page('One.\n\nTwo reads 5 V.')).at(-1)?.line).toBe(7));
});

describe('the check on glossary terms', () => {
  const glossary = {
    dropout: { term: 'dropout', meaning: 'A.', see: [] },
    ldo: { term: 'low-dropout regulator', meaning: 'B.', see: [] },
  };

  it('wants the first use linked', () => {
    expect(glossaryFaults(page('The <Term id="dropout">dropout</Term>. A dropout again.'), glossary)).toEqual([]);
    expect(glossaryFaults(page('The dropout. <Term id="dropout" /> again.'), glossary)).toEqual(['line 5: the first "dropout" is not linked to the glossary\'s "dropout"']);
  });

  it('wants it linked once', () => {
    expect(glossaryFaults(page('<Term id="dropout" /> and <Term id="dropout" />.'), glossary)).toHaveLength(1);
  });

  it('knows a plural, and does not take a longer term for a shorter one', () => {
    expect(glossaryFaults(page('Two dropouts.'), glossary)).toHaveLength(1);
    expect(glossaryFaults(page('A low-dropout regulator.'), glossary)).toEqual(['line 5: the first "low-dropout regulator" is not linked to the glossary\'s "ldo"']);
  });

  it('refuses a term that the glossary lacks', () => expect(glossaryFaults(page('<Term id="flux" />'), glossary)).toEqual(['line 5: the glossary has no "flux"']));
});

describe('the check on hazards', () => {
  const hazard = '<Hazard id="a" harm="fire" title="T" instead="I" />';
  it('finds one that is folded', () => {
    expect(hazardsShown(page(hazard)).folded).toEqual([]);
    expect(hazardsShown(page(`<details>\n\n${hazard}\n\n</details>`)).folded).toEqual(['line 7']);
  });
});

describe('the measure of reading', () => {
  it('adds mean sentence length to the share of long words', () => {
    // Eight words in two sentences, two of them over six letters: 4 + 25.
    expect(readability(['Two diodes conduct here. The reservoir fills again.']).lix).toBeCloseTo(29, 9);
  });

  it('names the longest sentence', () => expect(readability(['Short one. This is the longer one of both.']).longestSentence.words).toBe(7));

  it('counts a computed figure as a word', () => expect(wordsIn(passagesOf(page('It reads {say.mean}.'))[0]?.text ?? '')).toHaveLength(3));
});
