/* What stands between reservoir and load, for the calculators that let the reader choose among all kinds. */
import { LINEAR_REGULATORS, linearRegulator } from '../../compute/parts/regulator-linear.ts';
import { BUCKS, buck } from '../../compute/parts/regulator-switching.ts';
import { buckStage, linearStage } from '../../compute/supplies/chain-parts.ts';
import type { ChainStage } from '../../compute/supplies/chain-types.ts';
import type { FieldSet } from './definition.ts';
import { showMarked } from './units.ts';

const NONE = 'none';

export const stageFields = {
  regulator: {
    kind: 'choice',
    label: 'Regulator',
    options: [
      ...LINEAR_REGULATORS.map(({ id, name }) => ({ value: id, label: name })),
      ...BUCKS.map(({ id, name }) => ({ value: id, label: name })),
      { value: NONE, label: 'no regulator' },
    ],
    default: '7812',
  },
  setVolts: { kind: 'quantity', label: 'Rail', unit: 'V', default: 12, min: 1.25, max: 36, stepping: 0.5, hint: 'where the regulator does not fix it' },
} as const satisfies FieldSet;

export interface StageValues {
  readonly regulator: string;
  readonly setVolts: number;
}

const isBuck = (id: string): boolean => BUCKS.some((row) => row.id === id);

/** Whether the rail's volts are the reader's to set: not behind a fixed regulator. */
export const railIsSet = ({ regulator }: Pick<StageValues, 'regulator'>): boolean =>
  regulator === NONE || isBuck(regulator) || linearRegulator(regulator).family === 'adjustable';

/** The stage that the two fields stand for. */
export function stageOf(values: StageValues): ChainStage {
  const { regulator, setVolts } = values;
  if (regulator === NONE) return { kind: 'none', designVolts: setVolts };
  if (isBuck(regulator)) return buckStage(buck(regulator), setVolts);
  return linearStage(linearRegulator(regulator), railIsSet(values) ? setVolts : undefined);
}

/** Volts of the rail, whoever fixes them. */
export const railVoltsOf = (values: StageValues): number => (railIsSet(values) ? values.setVolts : linearRegulator(values.regulator).outputVolts);

/** "a 7812", "no regulator", for a sentence. */
export const stageName = (values: StageValues): string =>
  values.regulator === NONE ? `no regulator, ${showMarked(values.setVolts, 'V')}` : (isBuck(values.regulator) ? buck(values.regulator).name : linearRegulator(values.regulator).name.split(',')[0]) ?? '';
