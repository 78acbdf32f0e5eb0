import { windingHeat } from '../in-time/winding-heating.ts';
import { harmonicsOf } from '../noise/harmonics.ts';
import { sharedWireVolts } from '../noise/shared-wire.ts';
import { waveformMax, waveformMean, waveformMin, waveformRms } from '../network/waveform.ts';
import { windingCelsiusAt } from '../parts/transformer.ts';
import { coilRelease } from '../parts/suppression.ts';
import { stageHeatWatts } from '../supplies/regulator-stage.ts';
import type { BenchCircuit } from './bench-circuit.ts';
import { benchWaves } from './bench-waves.ts';
import { meterReading } from './meter-reading.ts';
import type { Readings, TestPointId } from './test-points.ts';

type Written = Partial<Record<TestPointId, number>>;

/** Tab of the regulator from its heat; the tolerance of its output is left out, since it is drawn. */
function tabCelsius(circuit: BenchCircuit, inputMeanVolts: number, amps: number): number | undefined {
  if (circuit.stage === undefined) return undefined;
  const { of, tab } = circuit.stage;
  return circuit.airCelsius + stageHeatWatts({ ...of, outputToleranceRatio: 0 }, inputMeanVolts, amps) * tab.tabToAir;
}

function readCommon(circuit: BenchCircuit, written: Written, railMeanVolts: number, inputMeanVolts: number): void {
  const amps = circuit.siemens * railMeanVolts;
  written['rail'] = railMeanVolts;
  written['load-amps'] = amps;
  const tab = tabCelsius(circuit, inputMeanVolts, amps);
  if (tab !== undefined) written['regulator-celsius'] = tab;
  if (circuit.coil !== undefined && railMeanVolts > 0.2) {
    written['coil-release'] = coilRelease({ ...circuit.coil, railVolts: railMeanVolts }).seconds;
  }
}

function readConverter(circuit: BenchCircuit, source: Extract<BenchCircuit['source'], { kind: 'converter' }>): Readings {
  const written: Written = { mains: circuit.mainsVolts };
  const stage = circuit.stage?.of;
  const set = stage === undefined ? source.volts : stage.outputVolts;
  const drop = stage === undefined ? 0 : stage.kind === 'buck' ? stage.headroomVolts : (stage.dropout.at(-1)?.[1] ?? 0);
  // Beyond its limit a converter that holds its current lets its volts fall.
  const limited = (siemens: number, volts: number): number => Math.min(volts, siemens > 0 ? source.limitAmps / siemens : volts);
  const rail = Math.max(0, Math.min(limited(circuit.siemens, set), source.volts - drop));
  const output = stage === undefined ? rail : rail < Math.min(set, source.volts - drop) ? Math.min(source.volts, rail + drop) : source.volts;
  written['converter-output'] = output;
  readCommon(circuit, written, rail, output);
  return written;
}

/**
 * What every test point of a built supply shows, its instruments taken as right. Waves are solved; temperatures, ripple
 * behind a regulator with headroom, and volts along a wire are estimates. A point that the circuit has not is missing; the
 * winding's temperature needs a rating. Throws as the solvers do.
 */
export function readBench(circuit: BenchCircuit): Readings {
  const { source, hertz, groundWire } = circuit;
  if (source.kind === 'converter') return readConverter(circuit, source);
  const waves = benchWaves(circuit, source);
  const { reservoirVolts, railVolts, windingVolts, windingAmps } = waves;
  const written: Written = { mains: circuit.mainsVolts, 'winding-open': source.supply.winding.openCircuitVolts };
  const meter = (values: Float64Array, kind: 'true-rms-ac' | 'averaging-ac'): number => meterReading({ values, meter: kind }).value;
  written['winding-loaded'] = meter(windingVolts, 'true-rms-ac');
  written['winding-loaded-averaging'] = meter(windingVolts, 'averaging-ac');
  const windingRms = waveformRms(windingAmps);
  written['winding-amps'] = windingRms;
  const inputMean = waveformMean(reservoirVolts);
  const ripple = meter(reservoirVolts, 'true-rms-ac');
  written['reservoir-mean'] = inputMean;
  written['reservoir-ripple'] = ripple;
  written['reservoir-ripple-averaging'] = meter(reservoirVolts, 'averaging-ac');
  written['reservoir-valley'] = waveformMin(reservoirVolts);
  written['reservoir-ripple-peaks'] = waveformMax(reservoirVolts) - waveformMin(reservoirVolts);
  const [first, second] = harmonicsOf({ values: reservoirVolts, hertz, orders: 2 }).harmonics;
  written['ripple-frequency'] = (first?.rms ?? 0) > 0.5 * (second?.rms ?? 0) ? hertz : 2 * hertz;
  readCommon(circuit, written, waveformMean(railVolts), inputMean);
  // What a regulator with headroom lets through, beside what comes through in dropout.
  const through = circuit.stage === undefined ? 0 : ripple * 10 ** (-circuit.rejectionDecibels / 20);
  written['rail-ripple'] = Math.hypot(meter(railVolts, 'true-rms-ac'), through);
  if (source.ratedAmps !== undefined) {
    const heat = windingHeat({ ratedAmps: source.ratedAmps });
    // A winding this hot would have opened, or burnt, before anyone read it.
    written['winding-celsius'] = Math.min(400, windingCelsiusAt({ knownRiseKelvin: heat.ratedKelvin, knownRmsAmps: heat.ratedAmps, rmsAmps: windingRms, airCelsius: circuit.airCelsius }));
  }
  if (groundWire !== undefined) {
    const { row, metres, carriesPulses } = groundWire;
    const load = railVolts.map((volts) => volts * circuit.siemens);
    written['ground-wire'] = sharedWireVolts({ row, metres, amps: carriesPulses ? waves.pulseAmps : load, hertz }).rmsVolts;
  }
  return written;
}
