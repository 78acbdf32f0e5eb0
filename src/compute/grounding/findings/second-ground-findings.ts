import type { Finding, Level } from '../../findings.ts';
import type { BranchCurrent } from '../branch-currents.ts';
import type { ClearingOption } from '../clearing.ts';
import type { GroundingFacts } from '../grounding-result.ts';
import type { PartStress } from '../overheating.ts';
import { capital, list, roughly, show } from './wording.ts';

/** Current between two grounds from which a fault of unrated parts is taken for one that burns, A RMS. Assumed. */
const BURNING_AMPS = 1;
/** Below this the second ground disturbs little, A RMS. Assumed. */
const SLIGHT_AMPS = 10e-3;

const isPastRating = (stress: PartStress): boolean => stress.secondsToLimit !== undefined || (stress.ratio ?? 0) > 1;

/** How serious a second ground is: by what it overheats, or, where nobody has read a rating, by its current. */
export const severity = (facts: GroundingFacts): Level => {
  const { rmsAmps } = facts.circulating;
  if (facts.stresses.some(isPastRating) || rmsAmps >= BURNING_AMPS) return 'hazard';
  return rmsAmps >= SLIGHT_AMPS ? 'outside' : 'marginal';
};

const hottest = (facts: GroundingFacts): BranchCurrent | undefined =>
  facts.branches
    .filter((branch) => branch.isFault && (branch.kind === 'winding' || branch.kind === 'half-winding' || branch.kind === 'converter'))
    // Two halves that carry the same are named in their order, whatever the last digit says.
    .reduce<BranchCurrent | undefined>((most, branch) => (most && branch.rmsAmps < most.rmsAmps * 1.01 ? most : branch), undefined);

const instruction = (option: ClearingOption): string => {
  const steps = [...option.remove.map((link) => link.removal), ...(option.then === '' ? [] : [option.then])];
  return `${capital(steps.join('; '))}.`;
};

const cure = (options: readonly ClearingOption[]): string => {
  const working = options.filter((option) => option.clears);
  const best = working[0];
  if (!best) return 'Leave one connection to the chassis only, and have the circuit looked at again.';
  const smaller = working.find((option) => option.isSmallest && option !== best && option.remove.length < best.remove.length);
  const other = smaller ?? working[1];
  return other ? `${instruction(best)} Or instead: ${instruction(other)}` : instruction(best);
};

const secondGround = (facts: GroundingFacts): Finding => {
  const { circulating, rail, points } = facts;
  const level = severity(facts);
  const winding = hottest(facts);
  const names = list(points.flatMap((point) => point.links.map((link) => `the ${link.name}`)));
  const through = winding ? ` The ${winding.name} carries ${show(winding.rmsAmps, 'A')} RMS.` : '';
  const resistor = facts.stresses.filter((stress) => stress.quantity === 'watts').sort((a, b) => b.value - a.value)[0];
  const cold = facts.branches.find((branch) => branch.id === resistor?.branchId)?.alone.watts ?? 0;
  const heated = resistor ? ` The ${resistor.name} takes ${show(resistor.value, 'W')} instead of ${show(cold, 'W')}.` : '';
  const best = facts.options[0];
  const tooMany = best ? ` One too many: ${list(best.remove.map((link) => `the ${link.name}`))}.` : '';
  return {
    rule: 'second-ground',
    level,
    what:
      `The circuit is grounded at ${points.length} points: ${names}. ${show(circulating.rmsAmps, 'A')} RMS, ${show(circulating.peakAmps, 'A')} at the peak, ` +
      `flows between them that would not with one ground.${through}${heated} The rail reads ${show(rail.meanVolts, 'V')}, against ${show(rail.aloneMeanVolts, 'V')} with one ground.${tooMany}`,
    numbers: [
      { name: 'circulating-rms-amps', value: circulating.rmsAmps, unit: 'A' },
      { name: 'circulating-peak-amps', value: circulating.peakAmps, unit: 'A' },
      ...(winding
        ? [
            { name: 'winding-rms-amps', value: winding.rmsAmps, unit: 'A' },
            { name: 'winding-peak-amps', value: winding.peakAmps, unit: 'A' },
          ]
        : []),
      ...(resistor
        ? [
            { name: 'resistor-watts', value: resistor.value, unit: 'W' },
            { name: 'resistor-watts-one-ground', value: cold, unit: 'W' },
          ]
        : []),
      { name: 'rail-mean-volts', value: rail.meanVolts, unit: 'V' },
      { name: 'rail-mean-volts-one-ground', value: rail.aloneMeanVolts, unit: 'V' },
    ],
    why:
      level === 'hazard'
        ? 'The chassis joins two points of the circuit that the rectifier keeps at different voltages, so part of the source works into almost a short circuit. It heats unseen while the rail still looks alive.'
        : 'The chassis joins two points of the circuit that the rectifier keeps at different voltages. What flows is small here, but the winding no longer balances about the chassis, and it hums.',
    todo: cure(facts.options),
    restsOn: facts.job.restsOn ?? ['assumed'],
    source: { id: 'solved' },
    harm: level === 'hazard' ? 'fire' : 'noise',
  };
};

const faultHeat = (facts: GroundingFacts): readonly Finding[] => {
  const first = facts.firstToOverheat;
  const unrated = facts.stresses.filter((stress) => stress.rated === undefined && stress.secondsToLimit === undefined && stress.finalCelsius === undefined);
  const findings: Finding[] = [];
  if (first) {
    const later = facts.stresses
      .filter((stress) => stress.secondsToLimit !== undefined && stress !== first)
      .sort((a, b) => (a.secondsToLimit ?? 0) - (b.secondsToLimit ?? 0));
    const limit = first.surge
      ? `takes ${show(first.surge.peakAmps, 'A')} every cycle and may take ${show(first.surge.allowedAmps, 'A')} once`
      : `passes ${show(first.limitCelsius ?? 0, '°C')} ${roughly(first.secondsToLimit ?? 0)}`;
    const others = later.map((stress) => `the ${stress.name} ${roughly(stress.secondsToLimit ?? 0)}`);
    findings.push({
      rule: 'fault-heat',
      level: 'hazard',
      what: `The ${first.name} goes first: it ${limit}.${others.length > 0 ? ` Left alone, then ${list(others)}.` : ''}`,
      numbers: facts.stresses.flatMap((stress) => [
        { name: `${stress.branchId}-${stress.quantity.replace(' ', '-')}`, value: stress.value, unit: stress.quantity === 'watts' ? 'W' : 'A' },
        ...(stress.ratio === undefined ? [] : [{ name: `${stress.branchId}-of-rating`, value: stress.ratio, unit: '' }]),
        ...(stress.secondsToLimit === undefined ? [] : [{ name: `${stress.branchId}-seconds-to-limit`, value: stress.secondsToLimit, unit: 's' }]),
      ]),
      why: 'A silicon diode that overheats fails as a short circuit: the winding is then shorted all through the cycle, not half of it. A winding that overheats loses its insulation, from the high-voltage windings beside it as well.',
      todo: 'Do not power it like this, not even for a reading. Take the second ground away first.',
      restsOn: first.restsOn,
      source: { id: 'solved' },
      harm: 'fire',
    });
  }
  if (unrated.length > 0) {
    findings.push({
      rule: 'fault-rating',
      level: 'not assessed',
      what: `Nobody has read what ${list(unrated.map((stress) => `the ${stress.name}`))} may carry, so how long it would stand the current between the grounds is not known.`,
      numbers: unrated.map((stress) => ({ name: stress.branchId, value: stress.value, unit: stress.quantity === 'watts' ? 'W' : 'A' })),
      why: 'Without a rating a part is not known to be within one.',
      todo: 'Read or measure the rating, or take the second ground away, which needs no rating.',
      restsOn: facts.job.restsOn ?? ['assumed'],
      source: { id: 'solved' },
    });
  }
  return findings;
};

const outsideSleeve = (facts: GroundingFacts): readonly Finding[] =>
  facts.branches
    .filter((branch) => branch.isFault && branch.id.endsWith('-outside'))
    .map((branch) => {
      const link = facts.links.find((entry) => entry.id === branch.id);
      // Not the branch's own watts: where two earths differ, that difference stands in it as a source.
      const heat = branch.rmsAmps ** 2 * (link?.ohms ?? 0);
      return {
        rule: 'outside-sleeve-grounds',
        level: 'hazard' as const,
        what: `The ${branch.name}, completes a second ground: ${show(branch.rmsAmps, 'A')} RMS flows through its cable and the building's earth (${show(link?.ohms ?? 0, 'Ω')}, ${show(heat, 'W')} of heat in them), only while it is plugged in.`,
        numbers: [
          { name: 'sleeve-rms-amps', value: branch.rmsAmps, unit: 'A' },
          { name: 'sleeve-peak-amps', value: branch.peakAmps, unit: 'A' },
          { name: 'sleeve-path-ohms', value: link?.ohms ?? 0, unit: 'Ω' },
          { name: 'sleeve-path-watts', value: heat, unit: 'W' },
        ],
        why: 'The amp passes every test on the bench and fails on stage. The current is limited by a signal cable and by earth wiring that belong to others, and both carry what they were never meant to.',
        todo: 'Meet the outside box through an isolated contact or an optocoupler, and ground the circuit at one point inside.',
        restsOn: facts.job.restsOn ?? ['assumed'],
        source: { id: 'solved' },
        harm: branch.rmsAmps >= BURNING_AMPS ? 'fire' : 'noise',
      } as const;
    });

const loops = (facts: GroundingFacts): readonly Finding[] => {
  const findings: Finding[] = [];
  for (const point of facts.points) {
    if (point.links.length < 2) continue;
    const worst = Math.max(...facts.branches.filter((branch) => point.links.some((link) => link.id === branch.id)).map((branch) => branch.rmsAmps));
    findings.push({
      rule: 'earth-loop',
      level: 'marginal',
      what: `One point of the circuit reaches the chassis by ${point.links.length} paths: ${list(point.links.map((link) => `the ${link.name}`))}. They carry up to ${show(worst, 'A')} RMS.`,
      numbers: [{ name: 'loop-rms-amps', value: worst, unit: 'A' }],
      why: 'No supply current is driven through them, but they close a loop: stray fields, and any difference between two earths, drive hum through it.',
      todo: 'Leave one path inside the amp; meet outside boxes through an isolated contact or an optocoupler.',
      restsOn: facts.job.restsOn ?? ['assumed'],
      source: { id: 'solved' },
      harm: 'noise',
    });
  }
  for (const jack of facts.job.connections.jacks) {
    if (jack.sleeve.kind !== 'chassis' || jack.gear.kind !== 'sleeve-to-earth' || facts.job.connections.ampEarth === 'absent') continue;
    const ohms = jack.gear.cableOhms + jack.gear.earthOhms;
    const volts = jack.gear.earthDifferenceVolts;
    findings.push({
      rule: 'earth-loop',
      level: 'marginal',
      what: `What is plugged into ${jack.name} joins its own earth to this chassis, which has one already${volts === undefined || ohms === 0 ? '' : `: ${show(volts, 'V')} between the two earths drives ${show(volts / ohms, 'A')} RMS through the cable`}.`,
      numbers: volts === undefined || ohms === 0 ? [] : [{ name: 'loop-rms-amps', value: volts / ohms, unit: 'A' }],
      why: 'The loop touches neither the rail nor its rectifier, but whatever shares the cable’s shield with an audio signal hums.',
      todo: 'Never lift a protective earth for it. Meet the outside box through an isolated contact or an optocoupler.',
      restsOn: facts.job.restsOn ?? ['assumed'],
      source: { id: 'solved' },
      harm: 'noise',
    });
  }
  return findings;
};

/** What a second ground does, what it burns, and loops that only hum. */
export function secondGroundFindings(facts: GroundingFacts): readonly Finding[] {
  if (facts.points.length < 2) return loops(facts);
  return [secondGround(facts), ...faultHeat(facts), ...outsideSleeve(facts), ...loops(facts)];
}
