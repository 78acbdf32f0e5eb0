import { SolveError } from '../errors.ts';
import { settleRail } from '../in-time/settled-rail.ts';
import type { TimedSupply } from '../in-time/timed-supply.ts';
import { heaterKelvinPerSecond, heaterOhms } from '../parts/heater.ts';
import type { HeaterModel } from '../parts/heater.ts';
import type { BenchCircuit, CircuitDefect } from './bench-circuit.ts';

/** A value between two ends by a degree of 0 to 1. */
export const byDegree = (degree: number, from: number, to: number): number => from + (to - from) * degree;

/** The same in equal ratios, for what is met over decades. */
export const byRatio = (degree: number, from: number, to: number): number => from * (to / from) ** degree;

/** The circuit with its winding, rectifier, reservoir and regulator put through a change; unchanged with a converter. */
export function throughSupply(circuit: BenchCircuit, change: (supply: TimedSupply) => TimedSupply): BenchCircuit {
  const { source } = circuit;
  return source.kind === 'winding' ? { ...circuit, source: { ...source, supply: change(source.supply) } } : circuit;
}

/** A reservoir of other farads and ESR, as ratios. */
export const reservoirScaled = (circuit: BenchCircuit, farads: number, ohms: number): BenchCircuit =>
  throughSupply(circuit, (supply) => ({ ...supply, reservoir: { farads: supply.reservoir.farads * farads, ohms: supply.reservoir.ohms * ohms } }));

/** A winding of other volts and ohms, as ratios. */
export function sourceScaled(circuit: BenchCircuit, volts: number, ohms: number): BenchCircuit {
  const { source } = circuit;
  if (source.kind !== 'winding') return circuit;
  const { winding } = source.supply;
  return {
    ...circuit,
    source: {
      ...source, ownVolts: source.ownVolts * volts, ownOhms: source.ownOhms * ohms,
      supply: { ...source.supply, winding: { openCircuitVolts: winding.openCircuitVolts * volts, ohms: winding.ohms * ohms } },
    },
  };
}

/** All of it at other mains; a converter does not mind. */
export const mainsScaled = (circuit: BenchCircuit, ratio: number): BenchCircuit => sourceScaled({ ...circuit, mainsVolts: circuit.mainsVolts * ratio }, ratio, 1);

/** Resistance added before the rectifier until the regulator drops out, and so much more; without one, until a fifth of the rail is gone. */
export function starved(circuit: BenchCircuit, more: number): BenchCircuit {
  const { source } = circuit;
  if (source.kind !== 'winding') return circuit;
  const before = settleRail({ supply: source.supply, siemens: circuit.siemens });
  const suffers = (ratio: number): boolean => {
    const { supply } = source;
    try {
      const rail = settleRail({ supply: { ...supply, winding: { ...supply.winding, ohms: supply.winding.ohms * ratio } }, siemens: circuit.siemens });
      return rail.held === 'unregulated' ? rail.meanVolts < 0.8 * before.meanVolts : rail.held !== 'regulated';
    } catch (error) {
      if (error instanceof SolveError) return true;
      throw error;
    }
  };
  let ratio = 1.5;
  while (ratio < 1000 && !suffers(ratio)) ratio *= 1.25;
  return sourceScaled(circuit, 1, ratio * more);
}

export const withDefect = (circuit: BenchCircuit, defect: CircuitDefect): BenchCircuit =>
  circuit.source.kind === 'winding' ? { ...circuit, source: { ...circuit.source, defect } } : circuit;

/** A regulator that has lost its way to the air: thermal resistance so many times what was planned, and 8 K/W more. */
export function withoutSink(circuit: BenchCircuit, ratio: number): BenchCircuit {
  const { stage } = circuit;
  return stage === undefined ? circuit : { ...circuit, stage: { ...stage, tab: { tabToAir: stage.tab.tabToAir * ratio + 8 } } };
}

/** A regulator of other volts than planned, as a ratio. */
export function outputScaled(circuit: BenchCircuit, ratio: number): BenchCircuit {
  const { stage } = circuit;
  if (stage === undefined) return circuit;
  const outputVolts = stage.of.outputVolts * ratio;
  const changed = { ...circuit, stage: { ...stage, of: { ...stage.of, outputVolts } } };
  return throughSupply(changed, (supply) => (supply.regulator === undefined ? supply : { ...supply, regulator: { ...supply.regulator, setVolts: outputVolts } }));
}

/**
 * Heaters that hold their supply in its current limit: it gives `share` of the running current and no more, and the heaters rest at
 * the temperature that this keeps them at. Found by halving between cold and hot: more current, hotter heaters, more volts.
 */
export function heatersStuck(circuit: BenchCircuit, options: { readonly heater: HeaterModel; readonly railVolts: number; readonly share: number }): BenchCircuit {
  const { heater, railVolts, share } = options;
  const others = Math.max(0, circuit.siemens - heater.amps / heater.volts);
  const limit = share * circuit.siemens * railVolts;
  const at = (kelvin: number): { readonly siemens: number; readonly amps: number } => {
    const ohms = heaterOhms({ model: heater, kelvin });
    const lostWatts = -heaterKelvinPerSecond({ model: heater, kelvin, watts: 0 }) * heater.joulesPerKelvin;
    const siemens = others + 1 / ohms;
    return { siemens, amps: Math.sqrt(Math.max(0, lostWatts) * ohms) * siemens };
  };
  let [cold, hot] = [heater.airKelvin, heater.hotKelvin];
  for (let round = 0; round < 40; round += 1) {
    const middle = (cold + hot) / 2;
    if (at(middle).amps < limit) cold = middle;
    else hot = middle;
  }
  const limited = throughSupply({ ...circuit, siemens: at(cold).siemens }, (supply) =>
    supply.regulator === undefined ? supply : { ...supply, regulator: { ...supply.regulator, limit: { peak: limit, atMaxInput: limit, maxInputVolts: 1000 } } });
  const { source } = limited;
  return source.kind === 'converter' ? { ...limited, source: { ...source, limitAmps: limit } } : limited;
}
