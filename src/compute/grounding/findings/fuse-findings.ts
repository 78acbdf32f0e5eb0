import type { Finding } from '../../findings.ts';
import { fuseStandard } from '../../parts/fuse.ts';
import type { FuseLoading } from '../fuses-in-fault.ts';
import type { GroundingFacts } from '../grounding-result.ts';
import { severity } from './second-ground-findings.ts';
import { atMost, show } from './wording.ts';

/** The fuse opens before anything is ruined, as far as that can be reckoned. */
const endsInTime = (facts: GroundingFacts, fuse: FuseLoading): boolean => {
  const ruin = Math.min(...facts.stresses.map((stress) => stress.secondsToRuin ?? stress.secondsToLimit ?? Infinity));
  return fuse.opensWithinSeconds !== undefined && fuse.opensWithinSeconds < ruin;
};

const numbersOf = (fuse: FuseLoading): Finding['numbers'] => [
  { name: 'fuse-amps', value: fuse.amps, unit: 'A' },
  { name: 'fuse-of-rating', value: fuse.ratio, unit: '' },
  ...(fuse.opensWithinSeconds === undefined ? [] : [{ name: 'fuse-opens-within-seconds', value: fuse.opensWithinSeconds, unit: 's' }]),
];

const opening = (fuse: FuseLoading): string =>
  fuse.opensWithinSeconds === undefined ? 'it need never open' : `its standard lets it take ${atMost(fuse.opensWithinSeconds)}`;

const mainsFuse = (facts: GroundingFacts): readonly Finding[] => {
  const { primary, job } = facts;
  if (!primary) return [];
  const base = {
    rule: 'mains-fuse-sees',
    why: 'A few volts at many amps is little power beside what the amp draws anyway, so nothing at the mains side ends this fault before the heat does.',
    todo: 'Do not count on the mains fuse. Take the second ground away, and fuse the winding at its own terminals from its solved RMS current.',
    restsOn: job.restsOn ?? (['assumed'] as const),
  } as const;
  const numbers = [
    { name: 'primary-rms-amps', value: primary.rmsAmps, unit: 'A' },
    { name: 'primary-rms-amps-one-ground', value: primary.aloneRmsAmps, unit: 'A' },
  ];
  const draws = `At the mains side this winding draws ${show(primary.rmsAmps, 'A')} RMS, against ${show(primary.aloneRmsAmps, 'A')} with one ground`;
  const { fuse } = primary;
  if (!fuse || !job.mainsFuse) {
    return [{ ...base, level: 'not assessed', what: `${draws}. Which fuse it passes through is not stated.`, numbers, source: { id: 'solved' } }];
  }
  const late = !endsInTime(facts, fuse);
  return [
    {
      ...base,
      level: late ? 'hazard' : 'outside',
      what: `${draws}. With the rest of the amp the ${show(fuse.ratedAmps, 'A')} fuse carries ${show(fuse.amps, 'A')} at most, ${fuse.ratio.toFixed(2)} of its rating: ${opening(fuse)}.`,
      numbers: [...numbers, ...numbersOf(fuse)],
      source: fuseStandard(job.mainsFuse.standard).source,
      ...(late ? { harm: 'fire' as const } : {}),
    },
  ];
};

const windingFuse = (facts: GroundingFacts): readonly Finding[] => {
  const { secondaryFuse: fuse, job } = facts;
  if (!fuse || !job.secondaryFuse || job.supply.kind !== 'winding') return [];
  const late = !endsInTime(facts, fuse);
  const other = facts.branches.some((branch) => branch.isFault && branch.id === 'diode-negative-to-second');
  const half = other && fuse.opensWithinSeconds !== undefined;
  return [
    {
      rule: 'winding-fuse-sees',
      level: late || half ? 'hazard' : 'outside',
      what: `The ${show(fuse.ratedAmps, 'A')} fuse at the winding's first end carries ${show(fuse.amps, 'A')} RMS of it, ${fuse.ratio.toFixed(1)} times its rating: ${opening(fuse)}.${half ? ' What flows by way of the second end goes on after that.' : ''}`,
      numbers: numbersOf(fuse),
      why: 'A fuse protects the path it lies in. With two grounds, the chassis gives the current a path round it.',
      todo: 'Take the second ground away; a fuse is for the fault that nobody foresaw.',
      restsOn: job.restsOn ?? ['assumed'],
      source: fuseStandard(job.secondaryFuse.standard).source,
      ...(late || half ? { harm: 'fire' as const } : {}),
    },
  ];
};

/** What the fuses at the mains and at the winding see of a second ground that burns. */
export function fuseFindings(facts: GroundingFacts): readonly Finding[] {
  return facts.points.length > 1 && severity(facts) === 'hazard' ? [...mainsFuse(facts), ...windingFuse(facts)] : [];
}
