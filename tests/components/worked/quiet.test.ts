import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/quiet.ts';

const { figures, quiz, ways } = work(shop);
const value = (name: string): number => (figures as Record<string, { value: number } | undefined>)[name]?.value ?? Number.NaN;

describe('what lesson 18 says of the Tarn 45’s charging pulses', () => {
  it('ten centimetres of wire move by about their ohms times the pulse, less its mean', () => {
    const byOhms = 0.1 * 0.0529 * (value('pulsePeak') - value('dc'));
    expect(value('wireOhms')).toBeCloseTo(0.00529, 9);
    expect(value('pulseVolts')).toBeGreaterThan(0.95 * byOhms);
    expect(value('pulseVolts')).toBeLessThan(1.3 * byOhms);
  });

  it('a poor joint outweighs the wire, and the moved wire keeps only a level', () => {
    expect(value('jointVolts')).toBeGreaterThan(2 * value('pulseVolts'));
    expect(value('steadyVolts')).toBeCloseTo(value('dc') * value('wireOhms'), 6);
    expect(value('steadyVolts')).toBeLessThan(value('pulseVolts') / 3);
  });

  it('buzzes at twice the mains frequency, with harmonics far up', () => {
    expect(value('firstHertz')).toBe(2 * value('mainsHertz'));
    expect(value('highVolts')).toBeGreaterThan(10e-6);
    expect(value('highVolts')).toBeLessThan(value('firstVolts') / 10);
  });
});

describe('what it says of strays and residue', () => {
  it('a twisted pair picks up many times less', () => expect(value('pairTimes')).toBeGreaterThan(10));

  it('a slow edge clicks a hundredth as loud as a fast one, an unsuppressed coil far louder than both', () => {
    expect(value('fastEdge') / value('slowEdge')).toBeGreaterThan(50);
    expect(value('kickEdge')).toBeGreaterThan(50 * value('fastEdge'));
    // A step shared by two capacitances: 1.5 pF against 100 pF.
    expect(value('fastEdge')).toBeCloseTo((12 * 1.5) / 101.5, 2);
  });

  it('a regulator leaves millivolts of a volt, a filter a millivolt or so of the residue', () => {
    expect(value('rippleBefore') / value('rippleAfter')).toBeGreaterThan(300);
    expect(value('residueAfter')).toBeLessThan(value('residueBefore') / 20);
    expect(value('filterFarads')).toBeLessThan(value('mostFarads'));
  });

  it('a bypass takes most of a heater’s leakage, a lamp on AC is dark for more than half of the time', () => {
    expect(value('leakBare')).toBeCloseTo(0.015, 6);
    expect(value('leakBypassed')).toBeLessThan(0.002);
    expect(value('lit')).toBeLessThan(0.5);
  });
});

it('draws both ways with their figures', () => {
  expect(ways.along.stageText).toContain('at the peak');
  expect(ways.apart.stageText).toContain('steady');
});

it('asks for ohms to the metre times metres times the peak', () => expect(quiz.answers['pulse-of-another']).toBeCloseTo(0.0333 * 0.25 * 4, 9));
