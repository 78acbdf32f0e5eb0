import type { Finding } from '../findings.ts';
import { figure, finding, say } from '../findings/check.ts';
import { allowedNoLoadExcess, frequencyUse, inrushBoundAmps, ratedPrimaryAmps, SHORT_CIRCUIT_MARKS } from '../parts/transformer.ts';
import type { PlanTransformer } from '../plan/plan-types.ts';
import type { Mains } from './corners.ts';

/** What its marking says of a short, the inrush it may draw, and how far its volts rise with nothing on it. */
export function transformerFindings({ mains, transformer }: { readonly mains: Mains; readonly transformer: PlanTransformer }): Finding[] {
  const { voltAmps, regulationRatio, shortCircuitMark, basis } = transformer;
  const proof = shortCircuitMark === 'inherently-proof' || shortCircuitMark === 'conditionally-proof' || shortCircuitMark === 'fail-safe';
  const primaryAmps = ratedPrimaryAmps({ voltAmps, mainsVolts: mains.nominalVolts });
  const inrush = inrushBoundAmps({ ratedAmps: primaryAmps, regulation: Math.min(1, regulationRatio) });
  const allowed = allowedNoLoadExcess(voltAmps);
  return [
    {
      rule: 'short-circuit-mark',
      level: proof ? 'within' : shortCircuitMark === 'unknown' ? 'not assessed' : 'outside',
      what: proof ? `It is marked so: ${SHORT_CIRCUIT_MARKS[shortCircuitMark]}` : shortCircuitMark === 'unknown' ? 'Nobody has read its short-circuit marking yet.' : `It is marked so: ${SHORT_CIRCUIT_MARKS['not-proof']}`,
      numbers: [],
      why: 'A small transformer with its secondary shorted draws too little from the mains to open a fuse in time; its winding burns instead.',
      todo: proof ? 'Nothing.' : 'Buy a type marked short-circuit-proof, or with a thermal link stated by its maker. The mark is read, never inferred.',
      restsOn: [shortCircuitMark === 'unknown' ? 'assumed' : 'rated'],
      source: { id: 'iec-61558-1', at: 'short-circuit classes' },
    },
    finding({
      rule: 'primary-current',
      level: 'within',
      what: `It takes ${say(primaryAmps, 'A')} from the mains at full load, and no more than ${say(inrush, 'A')} at the peak of switch-on.`,
      numbers: [figure('primary current', primaryAmps, 'A'), figure('inrush at most', inrush, 'A')],
      why: 'The amp’s switch and mains fuse carry this besides what they carry now.',
      todo: 'Give it a fuse of its own, behind the amp’s switch.',
      context: { corner: 'switch-on at the worst instant', restsOn: [basis] },
      source: { id: 'note-transformer-regulation' },
    }),
    finding({
      rule: 'no-load-rise',
      level: 'within',
      what: `Unloaded it gives ${say(regulationRatio, '%')} more than its label says; the standard allows ${say(allowed, '%')} for its size.`,
      numbers: [figure('rise', regulationRatio, ''), figure('allowed', allowed, '')],
      why: 'Reservoir and regulator must bear that, at high mains.',
      todo: 'Measure it unloaded before anything is connected behind it.',
      context: { corner: 'no load', restsOn: [basis] },
      source: { id: 'iec-61558-2-6' },
    }),
  ];
}

/** What nobody can compute: where its field goes. */
export const strayField: Finding = {
  rule: 'stray-field',
  level: 'not assessed',
  what: 'Whether its stray field is heard is for a listening test: turn it and move it before it is fixed.',
  numbers: [],
  why: 'A small transformer strays more for its size than a large one, at the mains frequency and its multiples.',
  todo: 'Put it at the mains end, its axis as the mains transformer’s, far from the input and the output transformer.',
  restsOn: ['assumed'],
  source: { id: 'note-transformer-regulation' },
};

/**
 * What a transformer marked for one frequency does on another mains. On a lower frequency than its own the core
 * saturates: a `hazard` of fire. Nothing is found where the marking allows it.
 */
export function checkFrequency({ mains, ratedHertz }: { readonly mains: Mains; readonly ratedHertz: 50 | 60 }): readonly Finding[] {
  const onHertz = mains.hertz < 55 ? 50 : 60;
  const { allowed, fluxRatio } = frequencyUse({ ratedHertz, mainsHertz: onHertz });
  if (allowed) return [];
  return [
    {
      rule: 'transformer-frequency',
      level: 'hazard',
      what: `It is marked for ${say(ratedHertz, 'Hz')} only, and this mains is ${say(mains.hertz, 'Hz')}: its core would be driven to ${say(fluxRatio, '')} times its flux.`,
      numbers: [figure('flux over its own', fluxRatio, '')],
      why: 'A saturated core lets the primary draw amps that nothing asked for; the winding burns with no load on it at all.',
      todo: 'Buy one that is marked for 50/60 Hz.',
      restsOn: ['rated'],
      source: { id: 'note-transformer-regulation' },
      harm: 'fire',
    },
  ];
}
