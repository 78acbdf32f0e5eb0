import { bySeverity, worstLevel, type Finding, type Level } from '../../compute/findings.ts';
import { analyseGrounding, solveGrounding } from '../../compute/grounding/analyse-grounding.ts';
import type { GroundingSolution } from '../../compute/grounding/grounding-result.ts';
import { isBeyondTouch, type ContactPotential } from '../../compute/grounding/jack-potentials.ts';
import { TOUCH_DC_VOLTS, TOUCH_RMS_VOLTS } from '../../compute/grounding/limits.ts';
import { checkOptocouplerBarrier } from '../../compute/findings/jack.ts';
import { optocoupler as partOf } from '../../compute/parts/optocoupler.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import { coilCheck } from '../coil-check/state.ts';
import { groundCheck } from '../ground-check/state.ts';
import { fields as indicatorFields } from '../indicator/fields.ts';
import { optocouplerOutcome } from '../indicator/optocoupler.ts';
import { levelOfRule } from '../shared/chain-view.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type InitialCase, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import { leadWithHazard } from '../shared/lead-with-hazard.ts';
import { parseFields } from '../shared/parse-fields.ts';
import { rawFields } from '../shared/raw-fields.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import { contactFindings, contactSteps, switchedContacts, type SwitchedContact } from './contacts.ts';
import { fields, type Values } from './fields.ts';
import { jobOf, railOf, type Moment } from './job.ts';
import { touchCurrent, type TouchCurrent } from './touch.ts';

/** One contact of the jack at one moment, above the chassis. */
export interface ContactVolts {
  readonly contact: 'tip' | 'ring' | 'sleeve';
  readonly moment: Moment;
  readonly dcVolts: number;
  readonly acVolts: number;
  readonly level: Level;
}

export interface OutsideGearView extends ViewModel {
  readonly corners: readonly CornerFigure[];
  readonly contacts: readonly ContactVolts[];
  readonly touch?: TouchCurrent;
  /** Current in the sleeve's way to the outside earth, RMS; none where there is no such way. */
  readonly sleeveAmps?: number;
  /** That current is driven by a second ground, and not by the difference of two earths alone. */
  readonly sleeveIsFault: boolean;
  readonly railVolts: number;
  /** The drawing in words. */
  readonly description: string;
  readonly findings: readonly Finding[];
  readonly working: readonly WorkingStep[];
  readonly handOn: readonly HandOnLink[];
}

const MOMENTS: readonly Moment[] = ['unplugged', 'plugged', 'pressed'];

/** Less than a bond drops is nought for a technician. */
const nought = (volts: number): number => (Math.abs(volts) < 1e-3 ? 0 : volts);

const contactName = ({ jack, side }: ContactPotential): ContactVolts['contact'] => (jack === 0 ? side : 'ring');

function contactVolts(solutions: Readonly<Record<Moment, GroundingSolution>>, values: Values): readonly ContactVolts[] {
  const moments = values.gear === 'none' ? MOMENTS.slice(0, 1) : MOMENTS;
  return moments.flatMap((moment) =>
    solutions[moment].jacks
      .filter(({ jack, side }) => jack === 0 || side === 'tip')
      .map((each) => ({
        contact: contactName(each), moment, dcVolts: nought(each.dcVolts), acVolts: nought(each.acVolts),
        // A figure above the chassis says nothing of a hand on earth where the circuit floats, or the chassis does.
        level: isBeyondTouch(each) ? ('hazard' as const) : solutions[moment].points.length === 0 || values.ampEarth !== 'verified' ? ('not assessed' as const) : ('within' as const),
      })),
  );
}

/** Hazards that are there only while nothing is plugged in: a box that earths the rail takes its earth away with it. */
const onlyUnplugged = (alone: readonly Finding[], plugged: readonly Finding[]): readonly Finding[] =>
  alone
    .filter(({ level, rule }) => level === 'hazard' && !plugged.some((each) => each.rule === rule && each.level === 'hazard'))
    .map((finding) => ({ ...finding, what: `With nothing plugged in: ${finding.what.replace(/^(The|A|An|If)\b/, (word) => word.toLowerCase())}` }));

/** What rests on the optocoupler. */
function barrier({ gear, part, ampEarth }: Values, { points, links }: GroundingSolution): readonly Finding[] {
  if (gear !== 'optocoupler') return [];
  const isRailBonded = ampEarth === 'verified' && points.length === 1 && links.some(({ kind, isWire, node }) => kind === 'rail-reference' && isWire && node === 'negative');
  return [checkOptocouplerBarrier({ corner: 'a breakdown behind it', restsOn: ['rated'], testVolts: partOf(part).isolationVolts, isRailBonded })];
}

/** The optocoupler's side of it, sized at the worst corner by the rules of the indicator calculator. */
function optocoupler(values: Values, railVolts: number) {
  if (values.gear !== 'optocoupler') return undefined;
  const { part, driveVolts, driveSpread, ledAmps, pullOhms } = values;
  const read = parseFields(indicatorFields, rawFields(indicatorFields, { what: 'optocoupler', part, railVolts: driveVolts, railSpread: driveSpread, ledAmps, pullUpVolts: Number(railVolts.toPrecision(4)), pullUpOhms: pullOhms }));
  return read.values === undefined ? undefined : optocouplerOutcome(read.values);
}

/** The jack's figures: what stands on it, what the switch passes, what goes round by the outside earth, what a hand would feel. */
function cornersOf(volts: readonly ContactVolts[], contacts: readonly SwitchedContact[], touch: TouchCurrent | undefined, sleeve: Pick<OutsideGearView, 'sleeveAmps' | 'sleeveIsFault'>, findings: readonly Finding[]): readonly CornerFigure[] {
  const corners: CornerFigure[] = [];
  const highest = [...volts].sort((a, b) => Math.abs(b.dcVolts) + b.acVolts - Math.abs(a.dcVolts) - a.acVolts)[0];
  if (highest !== undefined) {
    const isAc = highest.acVolts > Math.abs(highest.dcVolts);
    const [value, other] = isAc ? [highest.acVolts, `${showQuantity(highest.dcVolts, 'V')} DC`] : [highest.dcVolts, `${showQuantity(highest.acVolts, 'V')} AC`];
    const limit = isAc ? `limit ${showMarked(TOUCH_RMS_VOLTS.value, 'V')} RMS, dry` : `limit ${showMarked(TOUCH_DC_VOLTS.value, 'V')} DC, dry`;
    corners.push({ name: `most on the jack · ${highest.contact}, ${highest.moment}`, value, unit: 'V', of: isAc ? 'AC' : 'DC', level: highest.level, found: highest.level === 'not assessed' ? 'above a chassis or rail that may float' : limit, restsOn: `with ${other}` });
  }
  for (const each of contacts) corners.push({ name: `through the switch · ${each.contact}`, value: each.joined.amps, unit: 'A', of: '', found: each.feeds === 'coil' ? `the coil gets ${showQuantity(each.joined.share, '%', 2)} of the rail` : `resistor ${showQuantity(each.joined.entryWatts, 'W', 2)}` });
  if (sleeve.sleeveAmps !== undefined) corners.push({ name: 'sleeve to the outside earth', value: sleeve.sleeveAmps, unit: 'A', of: 'RMS', level: sleeve.sleeveIsFault ? 'hazard' : 'marginal', found: sleeve.sleeveIsFault ? 'a second ground drives it' : 'the two earths drive it' });
  if (touch !== undefined) corners.push({ name: touch.when === 'now' ? 'a hand on it, to earth' : 'a hand, were the bond lost', value: touch.rmsAmps, unit: 'A', of: 'RMS', ...(touch.when === 'now' ? { level: levelOfRule(findings, 'converter-leakage') } : {}), found: `${showQuantity(touch.peakAmps, 'A', 2)} at the peak` });
  return corners;
}

/** The loop by way of two earths that the analysis knows of only as a link: its current is the difference of the earths over the loop. */
function sleeveCurrent(solution: GroundingSolution, values: Values): Pick<OutsideGearView, 'sleeveAmps' | 'sleeveIsFault'> {
  const link = solution.branches.find(({ id }) => id === 'jack-1-outside');
  if (link !== undefined) return { sleeveAmps: link.rmsAmps, sleeveIsFault: link.isFault && solution.points.length > 1 };
  if (values.gear !== 'sleeve-to-earth' || values.sleeve !== 'chassis' || values.ampEarth === 'absent') return { sleeveIsFault: false };
  return { sleeveAmps: values.earthVolts / (values.cableOhms / 2 + values.earthOhms), sleeveIsFault: false };
}

const flowWords = (volts: readonly ContactVolts[], contacts: readonly SwitchedContact[], sleeve: ReturnType<typeof sleeveCurrent>, opto: string | undefined): string => {
  if (opto !== undefined) return `nothing of the rail is on the jack; ${opto}`;
  const tip = volts.find(({ contact, moment }) => contact === 'tip' && moment === 'unplugged');
  const stands = tip === undefined ? 'no contact of the jack is on the rail' : `the tip stands ${showQuantity(Math.abs(tip.dcVolts), 'V')} from the chassis`;
  const passes = contacts.map(({ contact, joined }) => `the ${contact} passes ${showQuantity(joined.amps, 'A')} when pressed`);
  const loop = sleeve.sleeveAmps === undefined ? [] : [`${showQuantity(sleeve.sleeveAmps, 'A', 2)} flows in the sleeve by way of ${sleeve.sleeveIsFault ? 'a second ground' : 'the two earths, a loop that can hum'}`];
  return [stands, ...passes, ...loop].join('; ');
};

const labelOf = (name: 'gear' | 'tip' | 'ring' | 'sleeve' | 'mounting' | 'railGround', value: string): string => fields[name].options.find((option) => option.value === value)?.label ?? value;

/** What is joined to what. */
function describe(values: Values): string {
  const { gear, tip, ring, sleeve, mounting, railGround } = values;
  const plugged = `The jack is ${labelOf('mounting', mounting)}; plugged in is ${labelOf('gear', gear)}. The rail’s negative is ${labelOf('railGround', railGround)}.`;
  if (gear === 'optocoupler') return `${plugged} Tip and sleeve feed the LED of an optocoupler.`;
  return `${plugged} On the tip is ${labelOf('tip', tip)}, on the ring ${labelOf('ring', ring)}, on the sleeve ${labelOf('sleeve', sleeve)}.`;
}

/** The coil with everything that is in series with it outside, on a rail that holds to 5 %. */
function coilCase({ entryOhms, cableOhms }: Values, { ohms }: SwitchedContact, volts: number): InitialCase {
  const inSeries = entryOhms + cableOhms;
  const [lowestVolts, highestVolts] = [0.95 * volts, 1.05 * volts].map((each) => Number(Math.min(80, each).toPrecision(3))) as [number, number];
  return { ohms: Math.min(50_000, ohms), switchedBy: 'contact', dropVolts: 0, lowestVolts, highestVolts, ...(inSeries >= 1 ? { seriesOhms: Math.min(50_000, inSeries) } : {}) };
}

function solve(values: Values): OutsideGearView {
  const rail = railOf(values);
  const analysis = analyseGrounding(jobOf(values, 'plugged', rail.loadOhms));
  const alone = analyseGrounding(jobOf(values, 'unplugged', rail.loadOhms));
  const solutions = { unplugged: alone, plugged: analysis, pressed: solveGrounding(jobOf(values, 'pressed', rail.loadOhms)) };
  const volts = contactVolts(solutions, values);
  const contacts = switchedContacts(values, rail.volts);
  const touch = touchCurrent(analysis.job);
  const sleeve = sleeveCurrent(analysis, values);
  const opto = optocoupler(values, rail.volts);
  const findings = [...analysis.findings, ...onlyUnplugged(alone.findings, analysis.findings), ...barrier(values, analysis), ...contactFindings(values, rail.volts, contacts), ...(opto?.findings ?? [])].sort(bySeverity);
  const coil = contacts.find(({ feeds }) => feeds === 'coil');
  return {
    level: worstLevel(findings),
    summary: leadWithHazard(findings, flowWords(volts, contacts, sleeve, opto?.words)),
    corners: [...(opto?.corners ?? []), ...cornersOf(volts, contacts, touch, sleeve, findings)].slice(0, 6),
    contacts: volts,
    ...(touch === undefined ? {} : { touch }),
    ...sleeve,
    railVolts: rail.volts,
    description: `${describe(values)} ${flowWords(volts, contacts, sleeve, opto?.words)}.`,
    findings,
    working: [
      workingStep({
        name: 'rail', words: values.feed === 'converter' ? 'The rail as the converter gives it.' : 'The rail that bridge and reservoir make of the winding at high mains, before any regulator.', formula: values.feed === 'converter' ? 'As given' : 'Solved',
        numbers: [], result: { symbol: 'V', value: rail.volts, unit: 'V' }, source: { id: 'solved' },
      }),
      ...contactSteps(values, rail.volts, contacts),
      ...(opto?.working ?? []),
      ...(touch === undefined ? [] : [workingStep({ name: 'touch', words: `What a hand passes ${touch.when === 'now' ? '' : 'once bond or earth is lost, '}at high mains: the converter’s capacitance in series with the hand of the standard.`, formula: 'Solved', numbers: [], result: { symbol: 'Ih', value: touch.rmsAmps, unit: 'A' }, source: { id: 'iec-60990', at: 'figure 3' } })]),
      ...(sleeve.sleeveAmps === undefined ? [] : [workingStep({ name: 'sleeve', words: 'What flows in the sleeve, round by the outside box’s earth.', formula: 'Solved', numbers: [], result: { symbol: 'Is', value: sleeve.sleeveAmps, unit: 'A' }, source: { id: 'solved' } })]),
    ],
    handOn: [
      ...(coil === undefined ? [] : [handOn(coilCheck, { what: `${showQuantity(rail.volts * coil.joined.share, 'V')} across the coil`, given: coilCase(values, coil, rail.volts) })]),
      handOn(groundCheck, { what: 'these grounds', given: { jack: values.sleeve === 'rail-positive' ? 'positive' : values.sleeve === 'chassis' ? 'chassis' : 'negative', groundGear: values.gear === 'sleeve-to-earth' ? 'chassis' : 'open', groundNegative: values.railGround === 'floating' ? 'open' : 'chassis', ...(values.feed === 'converter' ? { source: 'converter' } : {}) } }),
    ],
  };
}

export const outsideGear = defineCalculator({
  id: 'outside-gear',
  version: 1,
  question: 'What happens when a footswitch or another box is plugged in?',
  fields,
  quantities: {
    'connections.highTensionVolts': 'highVolts', 'connections.winding.volts': 'liftVolts', 'supply.openCircuitVolts': 'windingVolts', 'winding.openCircuitVolts': 'windingVolts', 'winding.ohms': 'windingOhms',
    'supply.outputVolts': 'railVolts', 'supply.limitAmps': 'limitAmps', 'load.amps': 'loadAmps', loadOhms: 'loadAmps', pullUpVolts: 'railVolts', volts: 'railVolts',
  },
  solve,
});
