import { describe, expect, it } from 'vitest';
import {
  LINEAR_REGULATORS, adjustableOutput, currentLimitAmps, dropoutVolts, linearRegulator, protectionDiodes, quiescentAmps, regulatedVolts, regulatorWatts,
} from '../../../src/compute/parts/regulator-linear.ts';

describe('the fixed family', () => {
  it('has every output of the family', () => {
    expect(LINEAR_REGULATORS.filter((row) => row.family === 'fixed').map((row) => row.outputVolts)).toEqual([5, 6, 8, 9, 10, 12, 15, 18, 24]);
  });

  it('holds 5 % over line, load and temperature', () => {
    expect(regulatedVolts(linearRegulator('7812'))).toEqual({ min: expect.closeTo(11.4, 12) as number, typical: 12, max: expect.closeTo(12.6, 12) as number });
    expect(regulatedVolts(linearRegulator('7824')).min).toBeCloseTo(22.8, 12);
  });

  it('drops 2 V typically at 1 A, less when lighter loaded or hot, and is planned with 2.5 V', () => {
    const part = linearRegulator('7805');
    expect(dropoutVolts({ part, amps: 1 })).toEqual({ typical: 2, planned: 2.5 });
    expect(dropoutVolts({ part, amps: 0.2 }).typical).toBeCloseTo(1.65, 12);
    expect(dropoutVolts({ part, amps: 1, junctionCelsius: 125 }).typical).toBeCloseTo(1.7, 12);
    expect(dropoutVolts({ part, amps: 0.2 }).planned).toBe(2.5);
  });

  it('bears 35 V at its input, the 24 V type 40 V', () => {
    expect(linearRegulator('7818').maxInputVolts).toBe(35);
    expect(linearRegulator('7824').maxInputVolts).toBe(40);
  });

  it('folds back into a short', () => {
    const part = linearRegulator('7805');
    expect(currentLimitAmps({ part, voltsAcross: 5 })).toBe(2.2);
    expect(currentLimitAmps({ part, voltsAcross: 35 })).toBeCloseTo(0.23, 12);
    expect(currentLimitAmps({ part, voltsAcross: 25 })).toBeLessThan(currentLimitAmps({ part, voltsAcross: 15 }));
  });
});

describe('the low-dropout class', () => {
  it('needs at most 1 V at 1 A over temperature', () => {
    const part = linearRegulator('ldo-5');
    expect(dropoutVolts({ part, amps: 1 })).toEqual({ typical: 0.5, planned: 1 });
    expect(part.outputCapacitorStabilises).toBe(true);
    expect(quiescentAmps({ part, amps: 1 }).typical).toBe(0.03);
  });
});

it('never plans with less dropout than is typical, at any load and temperature', () => {
  for (const part of LINEAR_REGULATORS) {
    for (const amps of [0, 0.05, 0.2, 0.5, 1, 1.5, 3]) {
      for (const junctionCelsius of [-20, 25, 70, 125]) {
        const { typical, planned } = dropoutVolts({ part, amps, junctionCelsius });
        expect(planned).toBeGreaterThanOrEqual(typical);
        expect(typical).toBeGreaterThanOrEqual(0);
      }
    }
  }
});

describe('the adjustable class', () => {
  const part = linearRegulator('317');

  it('follows its equation', () => {
    const output = adjustableOutput({ part, r1Ohms: 240, r2Ohms: 960, resistorTolerance: 0 });
    expect(output.typical).toBeCloseTo(1.25 * 5 + 50e-6 * 960, 12);
    expect(output.min).toBeCloseTo(1.2 * 5, 12);
    expect(output.max).toBeCloseTo(1.3 * 5 + 100e-6 * 960, 12);
  });

  it('asks for 120 Ω to carry its minimum load by itself', () => {
    expect(adjustableOutput({ part, r1Ohms: 120, r2Ohms: 470 }).minLoadMet).toBe(true);
    expect(adjustableOutput({ part, r1Ohms: 240, r2Ohms: 960 }).minLoadMet).toBe(false);
  });

  it('has a live tab', () => {
    expect(part.tab).toBe('output');
    expect(linearRegulator('7805').tab).toBe('ground');
  });
});

describe('heat', () => {
  it('is (Vin − Vout)·I plus what the ground pin takes', () => {
    expect(regulatorWatts({ inputMeanVolts: 33, outputVolts: 5, amps: 0.25, quiescentAmps: 0.005 })).toBeCloseTo(7.165, 10);
    expect(regulatorWatts({ inputMeanVolts: 4, outputVolts: 5, amps: 0.25, quiescentAmps: 0 })).toBe(0);
  });
});

describe('protection diodes', () => {
  const base = { outputVolts: 12, inputFarads: 2200e-6, outputFarads: 0.1e-6 };

  it('guards an output capacitor that outlasts the input', () => {
    expect(protectionDiodes({ part: linearRegulator('7812'), ...base })).toEqual([]);
    expect(protectionDiodes({ part: linearRegulator('7812'), ...base, outputFarads: 26e-6 })).toMatchObject([{ anode: 'output', cathode: 'input' }]);
    expect(protectionDiodes({ part: linearRegulator('7805'), ...base, outputVolts: 5, outputFarads: 26e-6 })).toEqual([]);
  });

  it('guards the reference from a capacitor on the adjust pin', () => {
    expect(protectionDiodes({ part: linearRegulator('317'), ...base, adjustFarads: 10e-6 })).toMatchObject([{ anode: 'adjust', cathode: 'output' }]);
  });
});
