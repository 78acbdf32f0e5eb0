import { describe, expect, it } from 'vitest';
import { shop } from '../../../src/components/shop.ts';
import { work } from '../../../src/components/worked/find-the-fault.ts';

const { figures, say } = work(shop);
const value = (name: string): number => (figures as Record<string, { value: number } | undefined>)[name]?.value ?? Number.NaN;

describe('what lesson 22 says of faults', () => {
  it('ripple frequency tells a dry reservoir from an open diode', () => {
    expect(value('dryHertz')).toBeCloseTo(120, 6);
    expect(value('openHertz')).toBeCloseTo(60, 6);
  });

  it('the readings of the worked case point to a dried reservoir, then to a high series resistance', () => {
    expect(say['firstId']).toBe('dried-reservoir');
    expect(say['secondId']).toBe('high-esr');
  });

  it('a heavy load leaves the open winding as it was, a wrong tap does not', () => {
    expect(value('loadOpen') / value('tapOpen')).toBeGreaterThan(1.2);
    expect(value('loadAmps')).toBeGreaterThan(0.12);
  });

  it('a second ground heats the winding many times over', () => expect(value('groundHeat')).toBeGreaterThan(10));
});
