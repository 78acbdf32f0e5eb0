import { SolveError } from '../errors.ts';
import { THERMAL_VOLTS } from '../parts/diode.ts';
import type { RectifierLoad, RectifierSolution } from '../rectifier/rectifier-types.ts';
import { solveRectifier } from '../rectifier/solve-rectifier.ts';
import type { ChainCorner, ChainDiode, ChainInput, ChainStage } from './chain-types.ts';
import { wattsTaken } from './chain-watts.ts';
import type { OperatingCorner } from './corners.ts';
import { neededInputVolts, railBehind, stageHeatWatts, stageJunctionCelsius } from './regulator-stage.ts';
import { acrossWinding, windingSource } from './winding-source.ts';

/** The diode with its forward drop shifted by the corner's spread: a smaller saturation current for a higher drop. */
function diodeAt(diode: ChainDiode, corner: OperatingCorner): ChainDiode {
  const shift = Math.exp(-corner.diodeShiftVolts / (diode.emission * THERMAL_VOLTS));
  return { ...diode, saturationAmps: diode.saturationAmps * shift };
}

const loadAmpsAt = ({ load }: ChainInput, corner: OperatingCorner): number =>
  ({ off: load.offAmps, running: load.runningAmps, everything: load.everythingAmps })[corner.load];

/**
 * What the reservoir feeds. With the load off the regulator's own current is left out: the highest volts are wanted
 * there, and a regulator may be unplugged.
 */
function loadOnReservoir(stage: ChainStage, corner: OperatingCorner, amps: number, peakVolts: number): RectifierLoad {
  if (stage.kind === 'none') return amps === 0 || stage.steady === true ? { amps } : { ohms: stage.designVolts / amps };
  if (corner.load === 'off') return { amps };
  // Its own current is taken at the highest input there can be; it is small.
  if (stage.kind === 'buck') return { watts: (stage.outputVolts + stage.lossVolts) * amps + stage.quiescentAmps * peakVolts };
  return { amps: amps + stage.quiescentAmps };
}

/** Heat in the stage; with nothing connected it burns its own current, which the solved circuit of that corner leaves out. */
function heatAt(stage: ChainStage, corner: OperatingCorner, inputMeanVolts: number, amps: number): number {
  if (stage.kind !== 'none' && corner.load === 'off') return inputMeanVolts * stage.quiescentAmps;
  return stageHeatWatts(stage, inputMeanVolts, amps);
}

/** Solves the chain at one corner. A corner without a steady state comes back unsolved, with the reason. */
export function solveCorner(input: ChainInput, corner: OperatingCorner): ChainCorner {
  const { winding, stage } = input;
  const amps = loadAmpsAt(input, corner);
  const source = windingSource(winding, corner);
  const reservoir = { farads: input.reservoir.farads * corner.faradsRatio, ohms: input.reservoir.ohms * corner.esrRatio };
  const windingPeakVolts = source.openCircuitVolts * corner.crestFactor;
  const load = loadOnReservoir(stage, corner, amps, windingPeakVolts * (input.topology === 'doubler' ? 2 : 1));
  const diode = diodeAt(input.diode, corner);
  let rectifier: RectifierSolution;
  try {
    rectifier = solveRectifier({
      topology: input.topology,
      winding: { openCircuitVolts: source.openCircuitVolts, ohms: source.ohms },
      hertz: corner.hertz,
      crestFactor: corner.crestFactor,
      diode,
      reservoir,
      load,
    });
  } catch (error) {
    if (error instanceof SolveError) return { solved: false, corner, reason: error.reason, message: error.message };
    throw error;
  }
  const { rail } = rectifier;
  const neededVolts = neededInputVolts(stage, amps);
  const regulatorWatts = heatAt(stage, corner, rail.meanVolts, amps);
  const across = winding.acrossOhms === undefined ? undefined : acrossWinding(winding.acrossOhms, source, rectifier);
  return {
    solved: true,
    corner,
    sourceOhms: source.ohms,
    windingPeakVolts,
    windingRmsAmps: across?.totalRmsAmps ?? rectifier.winding.rmsAmps,
    across,
    rectifier,
    rail: railBehind(stage, rectifier.waveform.railVolts, amps),
    loadAmps: stage.kind === 'none' ? rectifier.load.meanAmps : amps,
    neededVolts,
    headroomVolts: stage.kind === 'none' ? undefined : rail.minVolts - neededVolts,
    regulatorWatts,
    junctionCelsius: stageJunctionCelsius(stage, Math.max(0, regulatorWatts), input.cooling),
    watts: wattsTaken({
      topology: input.topology,
      diode,
      rectifier,
      load,
      windingOhms: source.ownOhms,
      reservoirOhms: reservoir.ohms,
      regulatorWatts: corner.load === 'off' ? 0 : regulatorWatts,
      across,
    }),
  };
}
