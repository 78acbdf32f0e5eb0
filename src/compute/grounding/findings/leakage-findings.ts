import type { Finding } from '../../findings.ts';
import { reachesOutside } from '../exposure.ts';
import type { GroundingFacts } from '../grounding-result.ts';
import { TOUCH_RMS_AMPS, UNEARTHED_TOUCH_RMS_AMPS } from '../limits.ts';
import { show } from './wording.ts';

/** What a converter lets through from the mains, and who meets it. */
export function leakageFindings(facts: GroundingFacts): readonly Finding[] {
  const { supply, connections } = facts.job;
  if (supply.kind !== 'converter') return [];
  const base = {
    rule: 'converter-leakage',
    why: 'A converter’s output is tied to the mains through a small capacitor inside it. Alone it floats at a large part of the mains voltage, and a hand that bridges it to earth feels it.',
    restsOn: connections.converterCoupling?.kind === 'rated-leakage' ? (['rated'] as const) : (facts.job.restsOn ?? (['assumed'] as const)),
  } as const;
  if (!connections.converterCoupling || connections.converterCoupling.kind === 'unknown') {
    return [
      {
        ...base,
        level: 'not assessed',
        what: 'Nobody has read the converter’s leakage or its capacitor from the mains to the output.',
        numbers: [],
        todo: 'Read the leakage or touch current on its data sheet, or measure it.',
        source: { id: 'solved' },
      },
    ];
  }
  const touch = facts.leakage;
  if (!touch) {
    const amps = facts.branches.find((branch) => branch.kind === 'converter-coupling')?.rmsAmps ?? 0;
    const verified = connections.ampEarth === 'verified';
    return [
      {
        ...base,
        level: verified ? 'within' : 'not assessed',
        what: `${show(amps, 'A')} RMS of leakage goes to the chassis by way of the rail’s ground${verified ? ' and home through protective earth' : ', and from there only if the chassis has its protective earth, which nobody has tested'}.`,
        numbers: [{ name: 'leakage-rms-amps', value: amps, unit: 'A' }],
        todo: verified ? 'Keep the bond and the earth sound; measure touch current when the work is done.' : 'Verify protective earth first.',
        source: { id: 'solved' },
      },
    ];
  }
  const handAmps = touch.hand?.acAmps ?? 0;
  const overClass = handAmps > TOUCH_RMS_AMPS.value;
  const over = handAmps > UNEARTHED_TOUCH_RMS_AMPS.value;
  const reachable = reachesOutside(connections) || connections.ampEarth === 'absent';
  const place = facts.links.length > 0 ? 'the chassis, which has no protective earth,' : 'the floating rail';
  return [
    {
      ...base,
      level: reachable ? 'hazard' : overClass ? 'outside' : 'marginal',
      what: `A meter from ${place} to earth reads ${show(touch.acVolts, 'V')} AC${touch.hand ? `; a hand there passes ${show(handAmps, 'A')} RMS, ${show(touch.hand.peakAmps, 'A')} at the peak` : ', within what may be touched'}${overClass ? `, over the ${show(TOUCH_RMS_AMPS.value, 'A')} of class 1` : over ? `, over the ${show(UNEARTHED_TOUCH_RMS_AMPS.value, 'A')} for parts that are not earthed` : ''}.`,
      numbers: [
        { name: 'open-circuit-ac-volts', value: touch.acVolts, unit: 'V' },
        ...(touch.hand
          ? [
              { name: 'hand-rms-amps', value: touch.hand.acAmps, unit: 'A' },
              { name: 'hand-peak-amps', value: touch.hand.peakAmps, unit: 'A' },
            ]
          : []),
      ],
      todo: reachable
        ? 'Verify protective earth, then bond the output’s negative to the chassis once; without a verified earth, no converter.'
        : 'Bond the output’s negative once to a verified protective earth, or keep it entirely inside.',
      source: over ? UNEARTHED_TOUCH_RMS_AMPS.source : { id: 'solved' },
      ...(reachable ? { harm: 'shock' as const } : {}),
    },
  ];
}
