import type { Finding } from '../../findings.ts';
import type { GroundingFacts } from '../grounding-result.ts';
import { show } from './wording.ts';

/** Part of the winding's voltage that may fail to cancel before a heater line is said to hum. Assumed. */
const BALANCED_PART = 0.02;

/** Whether the valve heaters still balance about the chassis. */
export function heaterFindings(facts: GroundingFacts): readonly Finding[] {
  const { heater, points, job } = facts;
  if (!heater || job.supply.kind !== 'winding') return [];
  const swings = (['first', 'second'] as const).map(
    (leg) => `the ${leg} end from ${show(heater[leg].minVolts, 'V')} to ${show(heater[leg].maxVolts, 'V')} (mean ${show(heater[leg].meanVolts, 'V')})`,
  );
  const base = {
    rule: 'heater-balance',
    numbers: [
      ...(['first', 'second'] as const).flatMap((leg) => [
        { name: `${leg}-mean-volts`, value: heater[leg].meanVolts, unit: 'V' },
        { name: `${leg}-ac-volts`, value: heater[leg].acVolts, unit: 'V' },
        { name: `${leg}-min-volts`, value: heater[leg].minVolts, unit: 'V' },
        { name: `${leg}-max-volts`, value: heater[leg].maxVolts, unit: 'V' },
      ]),
      { name: 'common-ac-volts', value: heater.commonVolts, unit: 'V' },
      { name: 'hum-peak-volts', value: heater.humPeakVolts, unit: 'V' },
      { name: 'buzz-peak-volts', value: heater.buzzPeakVolts, unit: 'V' },
    ],
    why: 'Heaters stay quiet because both ends swing equally and oppositely, so that what each couples into a grid cancels. What does not cancel is heard.',
    restsOn: job.restsOn ?? (['assumed'] as const),
    source: { id: 'solved' },
  } as const;
  if (points.length === 0) {
    return [
      {
        ...base,
        level: 'not assessed',
        what: 'Nothing holds the heater winding to the chassis, so strays alone decide how its ends balance.',
        numbers: [],
        todo: 'Give the heaters one reference: their tap, or two resistors.',
      },
    ];
  }
  const held = job.connections.winding.kind !== 'none';
  const balanced = heater.commonVolts < BALANCED_PART * job.supply.openCircuitVolts;
  return [
    {
      ...base,
      level: balanced && held ? 'within' : 'marginal',
      what: balanced
        ? `The heaters balance about the chassis: ${swings.join(', ')}.${held ? '' : ' Only the rectifier holds them there: between its pulses of current strays alone do, and strays are not in this figure.'}`
        : `The heaters do not balance about the chassis: ${swings.join(', ')}. ${show(heater.commonVolts, 'V')} RMS does not cancel, with ${show(heater.humPeakVolts, 'V')} of peak hum at the mains frequency and ${show(heater.buzzPeakVolts, 'V')} of buzz at twice that.`,
      todo: balanced
        ? held
          ? 'Leave it so.'
          : 'Listen with the gain up before you call it quiet.'
        : "Ground the heaters' centre only and leave the rail inside and floating, where insulation is known; or feed the rail from another winding; or listen, and accept it if nothing is heard.",
      ...(balanced && held ? {} : { harm: 'noise' as const }),
    },
  ];
}
