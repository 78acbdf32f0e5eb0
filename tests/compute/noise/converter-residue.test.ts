import { describe, expect, it } from 'vitest';
import { converterResidue } from '../../../src/compute/noise/converter-residue.ts';
import { capacitiveVolts } from '../../../src/compute/noise/stray-coupling.ts';

describe('converter residue', () => {
  const section = { henries: 10e-6, farads: 100e-6, esrOhms: 0.05 };
  it('is divided by coil and capacitor, more by two sections than by one', () => {
    const one = converterResidue({ rippleVolts: 0.1, hertz: 65e3, sections: [section] });
    const reactance = 2 * Math.PI * 65e3 * 10e-6;
    const across = Math.hypot(0.05, 1 / (2 * Math.PI * 65e3 * 100e-6));
    expect(one.railVolts / ((0.1 * across) / Math.hypot(0.05, reactance - 1 / (2 * Math.PI * 65e3 * 100e-6)))).toBeCloseTo(1, 9);
    const two = converterResidue({ rippleVolts: 0.1, hertz: 65e3, sections: [section, section] });
    expect(two.attenuationDecibels).toBeGreaterThan(1.8 * one.attenuationDecibels);
    expect(two.outputFarads).toBeCloseTo(200e-6, 9);
    expect(one.resonanceHertz[0]).toBeCloseTo(5033, 0);
  });

  it('is itself without a filter, and reaches a grid through stray capacitance', () => {
    const bare = converterResidue({ rippleVolts: 0.1, hertz: 65e3, sections: [], grid: { strayFarads: 1e-12, ohms: 1e6 } });
    expect(bare.railVolts).toBe(0.1);
    expect(bare.gridVolts).toBeCloseTo(capacitiveVolts({ farads: 1e-12, volts: 0.1 / (2 * Math.SQRT2), hertz: 65e3, ohms: 1e6 }), 12);
    expect(converterResidue({ rippleVolts: 0.1, hertz: 65e3, sections: [{ ...section, esrOhms: 0.2 }] }).railVolts)
      .toBeGreaterThan(converterResidue({ rippleVolts: 0.1, hertz: 65e3, sections: [section] }).railVolts);
  });
});
