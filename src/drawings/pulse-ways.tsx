import type { VNode } from 'preact';
import { Sheet } from './sheet.tsx';
import { ChassisGround, Node, PolarisedCapacitor } from './symbols.tsx';

export interface PulseWaysProps {
  readonly id: string;
  /** `along`: rectifier and reservoir at two ends of the first stage's ground wire. `apart`: joined directly, one wire to the star. */
  readonly way: 'along' | 'apart';
  /** The pulses' peak, and what the first stage's ground then moves by. */
  readonly pulseText: string;
  readonly stageText: string;
}

const TOP = 44;
const BUS = 152;
const RECTIFIER_X = 62;
const RESERVOIR_X = 344;
const STAGE_X = 214;

/** The loop that the pulses go round, in their direction: rectifier's plus, reservoir, and back to the rectifier's minus. */
export const PULSE_WAYS: Readonly<Record<PulseWaysProps['way'], string>> = {
  along: `M${RECTIFIER_X} ${TOP}H${RESERVOIR_X}V${BUS}H${RECTIFIER_X}V${TOP}`,
  apart: `M${RECTIFIER_X} ${TOP}H142V120H${RECTIFIER_X}V${TOP}`,
};

const WORDS: Readonly<Record<PulseWaysProps['way'], string>> = {
  along: 'The rectifier’s minus is at one end of the chassis’ ground wire, the reservoir’s at the other, and the first stage is grounded between them. The pulses run along the whole wire.',
  apart: 'The reservoir stands right at the rectifier, minus to minus. The pulses stay in that small loop. One wire goes from the reservoir’s minus to the star, where the first stage is grounded by a wire of its own.',
};

/** Where the charging pulses run about a first stage's ground: along it, or in a loop of their own. */
export function PulseWays({ id, way, pulseText, stageText }: PulseWaysProps): VNode {
  const along = way === 'along';
  const capacitorX = along ? RESERVOIR_X : 142;
  const capacitorY = along ? (TOP + BUS) / 2 : 82;
  const foot = along ? BUS : 120;
  return (
    <Sheet id={id} title={along ? 'Pulses along the first stage’s ground' : 'Pulses in a loop of their own'} desc={`${WORDS[way]} They are ${pulseText} at the peak. The first stage’s ground moves by ${stageText}.`} width={398} height={204}>
      <path class="path" d={PULSE_WAYS[way]} />
      <path class="part block" d={`M${RECTIFIER_X - 44} 62H${RECTIFIER_X + 30}V102H${RECTIFIER_X - 44}Z`} />
      <path class="wire" d={`M${RECTIFIER_X} 62V${TOP}H${capacitorX}V${capacitorY - 26}M${capacitorX} ${capacitorY + 26}V${foot}H${RECTIFIER_X}V102`} />
      {along ? (
        <path class="wire" d={`M${STAGE_X} 118V${BUS}`} />
      ) : (
        <path class="wire" d={`M142 120V${BUS}H${STAGE_X}M${STAGE_X} 118V${BUS}`} />
      )}
      <path class="part block" d={`M${STAGE_X - 32} 78H${STAGE_X + 32}V118H${STAGE_X - 32}Z`} />
      <PolarisedCapacitor at={[capacitorX, capacitorY]} />
      <Node at={[STAGE_X, BUS]} />
      <Node at={[capacitorX, foot]} />
      <ChassisGround at={[along ? 300 : STAGE_X, BUS]} />
      {along && <Node at={[300, BUS]} />}
      <text class="label-part" x={RECTIFIER_X - 7} y="87" text-anchor="middle">
        rectifier
      </text>
      <text class="label" x={STAGE_X} y="94" text-anchor="middle">
        first
      </text>
      <text class="label" x={STAGE_X} y="110" text-anchor="middle">
        stage
      </text>
      <text class="label-amps" x={along ? 200 : 104} y={TOP - 12} text-anchor="middle">
        {pulseText}
      </text>
      <text class="label-volts" x={along ? 146 : 242} y={BUS + (along ? 24 : 5)} text-anchor={along ? 'middle' : 'start'}>
        {stageText}
      </text>
      <text class="label" x={along ? 330 : 196} y={BUS + 24} text-anchor={along ? 'start' : 'end'}>
        {along ? 'chassis' : 'star'}
      </text>
    </Sheet>
  );
}
