import { THERMAL_VOLTS } from '../parts/diode.ts';
import type { RectifierLoad, RectifierSolution } from '../rectifier/rectifier-types.ts';
import type { AcrossWinding, ChainInput, WattsTaken } from './chain-types.ts';

/** Of the winding's current (of one half, for a centre tap): diodes it passes at a time, halves there are, and its mean magnitude over one diode's mean. */
const PATHS = {
  bridge: { diodes: 2, halves: 1, overDiodeMean: 2 },
  'centre-tap': { diodes: 1, halves: 2, overDiodeMean: 1 },
  'half-wave': { diodes: 1, halves: 1, overDiodeMean: 1 },
  doubler: { diodes: 1, halves: 1, overDiodeMean: 2 },
} as const;

/** Mean over one period of evenly spaced samples, of which the last repeats the first. */
const mean = (values: ArrayLike<number>, of: (value: number) => number): number => {
  const steps = values.length - 1;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += of(values[i] as number);
  return sum / steps;
};

export interface WattsOptions {
  readonly topology: ChainInput['topology'];
  readonly diode: ChainInput['diode'];
  readonly rectifier: RectifierSolution;
  readonly load: RectifierLoad;
  /** Of the winding by itself; of one half for a centre tap. */
  readonly windingOhms: number;
  readonly reservoirOhms: number;
  readonly regulatorWatts: number;
  readonly across: AcrossWinding | undefined;
}

/** Heat in all diodes: drop times current over the sampled cycle, its sampling error taken out by the solved mean current. */
function diodeWatts({ topology, diode, rectifier }: WattsOptions): number {
  const { windingAmps } = rectifier.waveform;
  const path = PATHS[topology];
  const magnitude = mean(windingAmps, Math.abs);
  if (magnitude === 0) return 0;
  const thermal = diode.emission * THERMAL_VOLTS;
  const sampled = mean(windingAmps, (signed) => {
    const amps = Math.abs(signed);
    return amps * (thermal * Math.log1p(amps / diode.saturationAmps) + diode.ohms * amps);
  });
  return (path.diodes * path.halves * sampled * path.overDiodeMean * rectifier.diode.meanAmps) / magnitude;
}

/** Books the power of one period; what the source gives is the sum of what its parts take. */
export function wattsTaken(options: WattsOptions): WattsTaken {
  const { topology, rectifier, load, windingOhms, reservoirOhms, regulatorWatts, across } = options;
  const windingAmps = across?.totalRmsAmps ?? rectifier.winding.rmsAmps;
  const winding = PATHS[topology].halves * windingAmps ** 2 * windingOhms;
  const reservoir = (topology === 'doubler' ? 2 : 1) * rectifier.reservoir.rmsAmps ** 2 * reservoirOhms;
  const diodes = diodeWatts(options);
  const out =
    'watts' in load ? load.watts
    : 'ohms' in load ? mean(rectifier.waveform.railVolts, (volts) => volts * volts) / load.ohms
    : load.amps * rectifier.rail.meanVolts;
  const heaters = across?.watts ?? 0;
  return {
    source: winding + reservoir + diodes + out + heaters,
    winding,
    diodes,
    reservoir,
    regulator: regulatorWatts,
    load: out - regulatorWatts,
    across: heaters,
  };
}
