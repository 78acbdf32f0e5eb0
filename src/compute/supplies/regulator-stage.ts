import { INSULATORS, heatsinkNeeded, JUNCTION_AIM_CELSIUS, junctionCelsius } from '../parts/heatsink.ts';
import type { HeatPath } from '../parts/heatsink.ts';
import { onCurve } from '../parts/interpolate.ts';
import { regulatorWatts } from '../parts/regulator-linear.ts';
import type { BuckStage, ChainStage, Cooling, LinearStage, RailVolts } from './chain-types.ts';

/** Bare metal with compound, unless the plan says otherwise. */
const COMPOUND_KELVIN_PER_WATT = INSULATORS.find((row) => row.id === 'bare-compound')?.kelvinPerWatt ?? 0.5;

/** Worst-case dropout of a series regulator at `amps`, on the straight lines between its points. */
export const dropoutOf = (stage: LinearStage, amps: number): number => onCurve(stage.dropout, amps);

/** Lowest input, in volts, at which the stage still gives its highest output at `amps`; 0 without a regulator. */
export function neededInputVolts(stage: ChainStage, amps: number): number {
  if (stage.kind === 'none') return 0;
  const highest = stage.outputVolts * (1 + stage.outputToleranceRatio);
  if (stage.kind === 'buck') return Math.max(stage.minInputVolts, highest + stage.headroomVolts);
  return highest + dropoutOf(stage, amps);
}

/**
 * The rail behind the stage, sample by sample from the reservoir's waveform: the output while the input suffices, the
 * input less the dropout while it does not (a linear regulator in dropout passes the ripple on). A step-down regulator
 * short of input is taken to pass its input less its headroom, at full duty.
 */
export function railBehind(stage: ChainStage, input: ArrayLike<number>, amps: number): RailVolts {
  const drop = stage.kind === 'none' ? 0 : stage.kind === 'buck' ? stage.headroomVolts : dropoutOf(stage, amps);
  const ceiling = stage.kind === 'none' ? Infinity : stage.outputVolts;
  // One period, evenly spaced; the last sample repeats the first and is left out of the mean.
  const steps = input.length - 1;
  let sum = 0;
  let minVolts = Infinity;
  let maxVolts = -Infinity;
  for (let i = 0; i < steps; i++) {
    const volts = Math.max(0, Math.min(ceiling, (input[i] as number) - drop));
    sum += volts;
    if (volts < minVolts) minVolts = volts;
    if (volts > maxVolts) maxVolts = volts;
  }
  return { meanVolts: sum / steps, minVolts, maxVolts, rippleVolts: maxVolts - minVolts };
}

/**
 * Heat in the stage under load, watts, from the mean input (the peaks of the ripple are burnt as well as its valleys)
 * and the lowest output the tolerance allows.
 */
export function stageHeatWatts(stage: ChainStage, inputMeanVolts: number, amps: number): number {
  if (stage.kind === 'none') return 0;
  if (stage.kind === 'buck') return stage.lossVolts * amps + stage.quiescentAmps * inputMeanVolts;
  return regulatorWatts({
    inputMeanVolts: Math.max(0, inputMeanVolts),
    outputVolts: stage.outputVolts * (1 - stage.outputToleranceRatio),
    amps,
    quiescentAmps: stage.quiescentAmps,
  });
}

/** Thermal resistances from the hottest junction to the air around it. */
export function heatPath(stage: LinearStage | BuckStage, cooling: Cooling): HeatPath {
  if (stage.kind === 'buck' || cooling.heatsinkKelvinPerWatt === undefined) return { junctionToAir: stage.junctionToAirKelvinPerWatt };
  return {
    junctionToCase: stage.junctionToCaseKelvinPerWatt,
    insulator: cooling.interfaceKelvinPerWatt ?? COMPOUND_KELVIN_PER_WATT,
    sinkToAir: cooling.heatsinkKelvinPerWatt,
  };
}

/** Those resistances added up, K/W. */
export function junctionToAirKelvinPerWatt(stage: LinearStage | BuckStage, cooling: Cooling): number {
  const path = heatPath(stage, cooling);
  return 'junctionToAir' in path ? path.junctionToAir : path.junctionToCase + path.insulator + path.sinkToAir;
}

/** Junction temperature, °C, with `watts` in the stage; undefined without a regulator. */
export function stageJunctionCelsius(stage: ChainStage, watts: number, cooling: Cooling): number | undefined {
  if (stage.kind === 'none') return undefined;
  return junctionCelsius({ watts, airCelsius: cooling.airCelsius, path: heatPath(stage, cooling) });
}

/**
 * The heatsink, K/W to air, that keeps the junction at what to aim at: `undefined` when none is needed, zero or less
 * when none is enough.
 */
export function stageHeatsink(stage: LinearStage, watts: number, cooling: Cooling): number | undefined {
  const rise = JUNCTION_AIM_CELSIUS - cooling.airCelsius;
  if (watts * stage.junctionToAirKelvinPerWatt <= rise) return undefined;
  return heatsinkNeeded({
    watts,
    airCelsius: cooling.airCelsius,
    junctionToCase: stage.junctionToCaseKelvinPerWatt,
    insulator: cooling.interfaceKelvinPerWatt ?? COMPOUND_KELVIN_PER_WATT,
  });
}
