import { THERMAL_VOLTS } from '../parts/diode.ts';
import type { ChainInput, SolvedCorner } from './chain-types.ts';

/** One step down from the winding's peak to what is left above the rail. */
export interface VoltageStair {
  readonly name:
    | 'winding-peak'
    | 'past-the-crest'
    | 'diodes'
    | 'copper'
    | 'reservoir-top'
    | 'ripple'
    | 'valley'
    | 'dropout'
    | 'output-tolerance'
    | 'rail'
    | 'left-over';
  /** `level` stands at a height; `loss` goes down by `volts` from the step above. */
  readonly kind: 'level' | 'loss';
  readonly volts: number;
  /** What this step is, in a few plain words. */
  readonly words: string;
}

const indexOfMax = (values: ArrayLike<number>): number => {
  let at = 0;
  for (let i = 1; i < values.length; i++) if ((values[i] as number) > (values[at] as number)) at = i;
  return at;
};

/**
 * Where every volt goes, from the unloaded winding's peak down to what is left above the rail, at one solved corner.
 *
 * The losses between the peak and the top of the ripple are read at the instant when the reservoir is fullest: the
 * source has by then passed its crest, and copper and diodes carry the current of that instant. For a doubler, whose
 * two capacitors are filled in turn, copper and diodes are those of the charging side taken twice and the first step
 * holds the rest: the other capacitor's sag. Levels and losses add up exactly, down to `left-over`, which is negative
 * when the regulator drops out. Without a regulator the stairs end at the valley.
 */
export function voltageStairs(input: Pick<ChainInput, 'topology' | 'diode' | 'stage'>, at: SolvedCorner): readonly VoltageStair[] {
  const sides = input.topology === 'doubler' ? 2 : 1;
  const { waveform, rail } = at.rectifier;
  const fullest = indexOfMax(waveform.railVolts);
  const top = waveform.railVolts[fullest] as number;
  const amps = Math.abs(waveform.windingAmps[fullest] as number);

  const diodesInPath = input.topology === 'bridge' ? 2 : sides;
  const junction = input.diode.emission * THERMAL_VOLTS * Math.log1p(amps / input.diode.saturationAmps);
  const diodes = diodesInPath * (junction + input.diode.ohms * amps + at.corner.diodeShiftVolts);
  const start = sides * at.windingPeakVolts;
  // On a flat-topped wave the reservoir is fullest while the source is still at its crest; sampling may miss that by
  // a millivolt, which copper then takes so that the stairs add up.
  const rest = start - diodes - sides * amps * at.sourceOhms - top;
  const past = rest > 1e-3 ? rest : 0;
  const copper = start - past - diodes - top;

  const stairs: VoltageStair[] = [
    { name: 'winding-peak', kind: 'level', volts: start, words: sides === 2 ? 'Twice the peak of the winding' : 'Peak of the winding before the rectifier draws' },
    { name: 'past-the-crest', kind: 'loss', volts: past, words: sides === 2 ? 'Past the crest, and the sag of the other capacitor' : 'Past the crest when the reservoir is fullest' },
    { name: 'diodes', kind: 'loss', volts: diodes, words: diodesInPath === 2 ? 'Two diodes' : 'One diode' },
    { name: 'copper', kind: 'loss', volts: copper, words: 'Resistance of the winding' },
    { name: 'reservoir-top', kind: 'level', volts: top, words: 'Top of the ripple' },
    { name: 'ripple', kind: 'loss', volts: top - rail.minVolts, words: 'Ripple' },
    { name: 'valley', kind: 'level', volts: rail.minVolts, words: 'Valley of the ripple' },
  ];
  if (input.stage.kind === 'none') return stairs;
  const tolerance = input.stage.outputVolts * input.stage.outputToleranceRatio;
  stairs.push(
    { name: 'dropout', kind: 'loss', volts: at.neededVolts - input.stage.outputVolts - tolerance, words: 'Worst dropout of the regulator' },
    { name: 'output-tolerance', kind: 'loss', volts: tolerance, words: 'Highest output its tolerance allows' },
    { name: 'rail', kind: 'level', volts: input.stage.outputVolts, words: 'The rail' },
    { name: 'left-over', kind: 'level', volts: rail.minVolts - at.neededVolts, words: 'Left over' },
  );
  return stairs;
}
