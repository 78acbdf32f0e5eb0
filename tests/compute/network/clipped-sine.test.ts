import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/compute/index.ts';
import { clippedSine, clippedSineAt } from '../../../src/compute/network/clipped-sine.ts';

describe('clippedSine', () => {
  for (const crest of [1.05, 1.2, 1.35, 1.4, Math.SQRT2]) {
    it(`crest factor ${crest.toFixed(3)}: RMS one, peak the crest factor`, () => {
      const wave = clippedSine(crest);
      const samples = Array.from({ length: 20_000 }, (_, k) => clippedSineAt(wave, (2 * Math.PI * (k + 0.5)) / 20_000));
      expect(Math.sqrt(samples.reduce((s, v) => s + v * v, 0) / samples.length)).toBeCloseTo(1, 6);
      expect(Math.max(...samples)).toBeCloseTo(crest, 6);
      expect(clippedSineAt(wave, wave.cornerRadians)).toBeCloseTo(crest, 9);
    });
  }
  it('takes √2 as people write it', () => {
    expect(clippedSine(1.415).level).toBe(1);
    expect(clippedSine().crestFactor).toBe(Math.SQRT2);
  });
  it('refuses a wave flatter than it models, or more peaked than a sine', () => {
    expect(() => clippedSine(1)).toThrow(InputError);
    expect(() => clippedSine(1.5)).toThrow(InputError);
  });
});
