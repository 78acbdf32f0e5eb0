import { clippedSineAt } from '../network/clipped-sine.ts';
import type { ClippedSine } from '../network/clipped-sine.ts';
import { WAVEFORM_INTERVALS } from './cycle-trace.ts';
import type { CycleTrace } from './cycle-trace.ts';
import type { RectifierTopology, RectifierWaveform } from './rectifier-types.ts';

export interface CycleWaveformOptions {
  readonly trace: CycleTrace;
  readonly topology: RectifierTopology;
  readonly wave: ClippedSine;
  readonly openCircuitVolts: number;
  readonly hertz: number;
}

/** One cycle, evenly sampled, from a traced pass; a pass of half a cycle is completed by its symmetry. */
export function cycleWaveform({ trace, topology, wave, openCircuitVolts, hertz }: CycleWaveformOptions): RectifierWaveform {
  const { gridIndex } = trace;
  const intervals = gridIndex.length - 1;
  const seconds = new Float64Array(WAVEFORM_INTERVALS + 1);
  const railVolts = new Float64Array(WAVEFORM_INTERVALS + 1);
  const windingAmps = new Float64Array(WAVEFORM_INTERVALS + 1);
  const sourceVolts = new Float64Array(WAVEFORM_INTERVALS + 1);
  for (let i = 0; i <= WAVEFORM_INTERVALS; i += 1) {
    const mirrored = i > intervals;
    const k = gridIndex[mirrored ? i - intervals : i] as number;
    seconds[i] = i / WAVEFORM_INTERVALS / hertz;
    sourceVolts[i] = openCircuitVolts * clippedSineAt(wave, (2 * Math.PI * i) / WAVEFORM_INTERVALS);
    railVolts[i] = trace.railVolts[k] as number;
    // In the second half-cycle the two arms have exchanged parts.
    const own = (mirrored ? trace.amps2[k] : trace.amps1[k]) as number;
    const other = (mirrored ? trace.amps1[k] : trace.amps2[k]) as number;
    windingAmps[i] = topology === 'half-wave' || topology === 'centre-tap' ? own : own - other;
  }
  return { seconds, railVolts, windingAmps, sourceVolts };
}
