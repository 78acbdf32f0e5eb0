import { SolveError } from '../errors.ts';
import { clippedSine } from '../network/clipped-sine.ts';
import { THERMAL_VOLTS } from '../parts/diode.ts';
import { constantRail } from '../rectifier/constant-rail.ts';
import type { RectifierLoad, RectifierOptions, RectifierSolution } from '../rectifier/rectifier-types.ts';
import { solveRectifier } from '../rectifier/solve-rectifier.ts';
import type { ChainCorner, ChainDiode, ChainInput, ChainStage } from './chain-types.ts';
import { wattsTaken } from './chain-watts.ts';
import type { OperatingCorner } from './corners.ts';
import { neededInputVolts, railBehind, stageHeatWatts, stageJunctionCelsius } from './regulator-stage.ts';
import { acrossWinding, windingSource } from './winding-source.ts';
import type { WindingSource } from './winding-source.ts';

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

/** The rectifier's circuit at one corner, with what was made of the chain's parts there. */
interface CornerCircuit {
  readonly options: RectifierOptions;
  readonly source: WindingSource;
  readonly diode: ChainDiode;
  readonly amps: number;
  readonly windingPeakVolts: number;
}

function cornerCircuit(input: ChainInput, corner: OperatingCorner): CornerCircuit {
  const { topology } = input;
  const source = windingSource(input.winding, corner);
  const diode = diodeAt(input.diode, corner);
  const amps = loadAmpsAt(input, corner);
  const windingPeakVolts = source.openCircuitVolts * corner.crestFactor;
  return {
    source,
    diode,
    amps,
    windingPeakVolts,
    options: {
      topology,
      winding: { openCircuitVolts: source.openCircuitVolts, ohms: source.ohms },
      hertz: corner.hertz,
      crestFactor: corner.crestFactor,
      diode,
      reservoir: { farads: input.reservoir.farads * corner.faradsRatio, ohms: input.reservoir.ohms * corner.esrRatio },
      load: loadOnReservoir(input.stage, corner, amps, windingPeakVolts * (topology === 'doubler' ? 2 : 1)),
    },
  };
}

/** The rail of a reservoir without end at one corner: no real one holds its valley higher, or draws more RMS current. */
export function ripplelessRail(input: ChainInput, corner: OperatingCorner): { readonly railVolts: number; readonly windingRmsAmps: number } {
  const { options } = cornerCircuit(input, corner);
  const rail = constantRail(options, clippedSine(options.crestFactor));
  const whole = input.topology === 'bridge' || input.topology === 'doubler';
  return {
    railVolts: rail.reservoirVolts * (input.topology === 'doubler' ? 2 : 1),
    windingRmsAmps: Math.sqrt(rail.armMeanSquare * (whole ? 2 : 1)),
  };
}

/** Solves the chain at one corner. A corner without a steady state comes back unsolved, with the reason. */
export function solveCorner(input: ChainInput, corner: OperatingCorner): ChainCorner {
  const { winding, stage } = input;
  const { options, source, diode, amps, windingPeakVolts } = cornerCircuit(input, corner);
  const { load, reservoir } = options;
  let rectifier: RectifierSolution;
  try {
    rectifier = solveRectifier(options);
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
