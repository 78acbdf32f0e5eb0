import { describe, expect, it } from 'vitest';
import { ledCorners } from '../../../src/compute/parts/led-corners.ts';
import { ledOnAc, ledResistorOnAc, ledRow } from '../../../src/compute/parts/led.ts';

const { forwardVolts } = ledRow('red');

describe('an LED at the corners of its supply', () => {
  it('takes least with the lowest supply and the most drop, most with the highest and the least', () => {
    const at = ledCorners({ feed: 'dc', volts: 12, spread: 0.05, forwardVolts, ohms: 1000 });
    expect(at.low.amps).toBeCloseTo((11.4 - 2.2) / 1000, 12);
    expect(at.high.amps).toBeCloseTo((12.6 - 1.6) / 1000, 12);
    expect(at.high.watts).toBeCloseTo(0.011 ** 2 * 1000, 12);
    expect(at.low.reverseVolts).toBe(0);
  });

  it('goes dark below its drop, on DC and on AC', () => {
    const options = { volts: 1.4, spread: 0.1, forwardVolts, ohms: 100 } as const;
    expect(ledCorners({ ...options, feed: 'dc' }).low).toMatchObject({ amps: 0, litShare: 0, watts: 0 });
    expect(ledCorners({ ...options, feed: 'ac' }).low).toMatchObject({ amps: 0, litShare: 0 });
  });

  it('divides the reverse volts over a string', () => {
    const one = ledCorners({ feed: 'ac', volts: 12, spread: 0, forwardVolts, ohms: 1000 }).nominal.reverseVolts;
    expect(ledCorners({ feed: 'ac', volts: 12, spread: 0, forwardVolts, count: 3, ohms: 1000 }).nominal.reverseVolts).toBeCloseTo(one / 3, 12);
  });
});

it('gives back on AC the mean current that its resistor was chosen for', () => {
  const wanted = { rmsVolts: 6.3, forwardVolts: 1.8, amps: 0.005 };
  const { ohms, peakAmps } = ledResistorOnAc(wanted);
  expect(ledOnAc({ rmsVolts: 6.3, forwardVolts: 1.8, ohms }).meanAmps).toBeCloseTo(0.005, 15);
  expect(ledOnAc({ rmsVolts: 6.3, forwardVolts: 1.8, ohms }).peakAmps).toBe(peakAmps);
});
