import { describe, expect, it } from 'vitest';
import { THERMAL_VOLTS } from '../../../src/compute/parts/diode.ts';
import type { Element } from '../../../src/compute/network/elements.ts';
import { solveNetwork } from '../../../src/compute/network/solve-network.ts';
import { solveChain } from '../../../src/compute/supplies/chain.ts';
import type { ChainInput, SolvedCorner } from '../../../src/compute/supplies/chain-types.ts';
import { NINE_VOLT_JOB } from './chain-cases.ts';

/** A 6.3 V winding with 3 A of heaters, and a Schottky rectifier beside them. */
const JOB: ChainInput = {
  ...NINE_VOLT_JOB,
  mains: { nominalVolts: 230, lowVolts: 207, highVolts: 253, hertz: 50 },
  winding: { openCircuitVolts: 6.7, ohms: 0.12, acrossOhms: 2.1, basis: 'measured' },
  diode: { ...NINE_VOLT_JOB.diode, name: '3 A Schottky', saturationAmps: 1.39e-5, emission: 1.0315, ohms: 0.0384 },
  reservoir: { farads: 4700e-6, ohms: 0.03, ratedVolts: 16, basis: 'typical' },
  stage: { kind: 'none', designVolts: 8 },
  load: { offAmps: 0, runningAmps: 0.1, everythingAmps: 0.3 },
};

/** The whole circuit, heaters and all, as the general solver takes it: nothing reduced, nothing reconstructed. */
function wholeCircuit(input: ChainInput, at: SolvedCorner): readonly Element[] {
  const { corner } = at;
  const { winding, diode, reservoir } = input;
  const saturationAmps = diode.saturationAmps * Math.exp(-corner.diodeShiftVolts / (diode.emission * THERMAL_VOLTS));
  const anode = (name: string, from: string, to: string): Element => ({ kind: 'diode', name, between: [from, to], saturationAmps, emission: diode.emission, ohms: diode.ohms });
  const store = (name: string, from: string, to: string): Element => ({
    kind: 'capacitor',
    name,
    between: [from, to],
    farads: reservoir.farads * corner.faradsRatio,
    ohms: reservoir.ohms * corner.esrRatio,
  });
  const loadOhms = (input.stage.kind === 'none' ? input.stage.designVolts : 1) / (corner.load === 'everything' ? input.load.everythingAmps : input.load.runningAmps);
  const common: Element[] = [
    {
      kind: 'sine',
      name: 'winding',
      between: ['a', 'b'],
      peakVolts: winding.openCircuitVolts * corner.mainsRatio * corner.crestFactor,
      crestFactor: corner.crestFactor,
      ohms: winding.ohms,
    },
    { kind: 'resistor', name: 'heaters', between: ['a', 'b'], ohms: winding.acrossOhms ?? 1e6 },
    { kind: 'resistor', name: 'load', between: ['plus', 'ground'], ohms: loadOhms },
  ];
  if (input.topology === 'doubler') {
    return [...common, anode('d1', 'a', 'plus'), anode('d2', 'ground', 'a'), store('c1', 'plus', 'b'), store('c2', 'b', 'ground')];
  }
  return [...common, anode('d1', 'a', 'plus'), anode('d2', 'b', 'plus'), anode('d3', 'ground', 'a'), anode('d4', 'ground', 'b'), store('c1', 'plus', 'ground')];
}

const rms = (values: Float64Array): number => Math.sqrt(values.slice(0, -1).reduce((sum, value) => sum + value * value, 0) / (values.length - 1));
const mean = (values: Float64Array): number => values.slice(0, -1).reduce((sum, value) => sum + value, 0) / (values.length - 1);

describe('heaters and rectifier on one winding, against the whole circuit solved as it stands', () => {
  for (const topology of ['bridge', 'doubler'] as const) {
    const input: ChainInput = { ...JOB, topology, ...(topology === 'doubler' ? { stage: { kind: 'none', designVolts: 15 } } : {}) };
    const corners = solveChain(input).corners.filter((at): at is SolvedCorner => at.solved && at.corner.load === 'everything');
    it.each(corners.map((at) => [at.corner.words, at] as const))(`${topology}: %s`, (_, at) => {
      const whole = solveNetwork({ hertz: at.corner.hertz, elements: wholeCircuit(input, at), intervals: 2048 });
      const windingAmps = whole.amps['winding'] as Float64Array;
      const heaterAmps = whole.amps['heaters'] as Float64Array;
      const rail = whole.volts['plus'] as Float64Array;
      const near = (ours: number, theirs: number, share: number): void => {
        expect(Math.abs(ours / theirs - 1), `${ours} against ${theirs}`).toBeLessThan(share);
      };
      // The accuracy owed: 0.3 % of the mean rail, 2 % of currents; the heaters' own are smooth and nearer than that.
      near(at.rectifier.rail.meanVolts, mean(rail), 0.001);
      near(at.windingRmsAmps, rms(windingAmps), 0.005);
      near(at.across?.rmsAmps ?? 0, rms(heaterAmps), 0.003);
      near(at.across?.rmsVolts ?? 0, rms(heaterAmps) * 2.1, 0.003);
      near(at.across?.crestFactor ?? 0, Math.max(...heaterAmps) / rms(heaterAmps), 0.01);
    });
  }
});
