import type { Harm } from '../findings.ts';
import { byDegree, byRatio, heatersStuck, mainsScaled, outputScaled, reservoirScaled, sourceScaled, starved, throughSupply, withDefect, withoutSink } from './circuit-changes.ts';
import type { BenchCircuit } from './bench-circuit.ts';
import { designVolts } from './bench-job.ts';
import type { BenchJob } from './bench-job.ts';

export type CauseId =
  | 'nothing-wrong' | 'open-diode' | 'shorted-diode' | 'dried-reservoir' | 'high-esr' | 'missing-reservoir' | 'dropout' | 'heavy-load' | 'low-tap' | 'high-tap'
  | 'low-mains' | 'second-ground' | 'pulses-in-ground' | 'slow-release' | 'hot-regulator' | 'low-regulator' | 'high-regulator' | 'cold-heaters';

/** Something that can be wrong with a built supply, as a change of its circuit. */
export interface Cause {
  readonly id: CauseId;
  readonly words: string;
  /** How to be sure, by one look or one reading. */
  readonly confirm: string;
  /** Set where going on with the supply under power courts harm. */
  readonly harm?: Harm;
  /** Whether this job can have it at all. */
  readonly applies: (job: BenchJob) => boolean;
  /** The circuit with it, from a mild case (degree 0) to a bad one (1). */
  readonly change: (circuit: BenchCircuit, degree: number, job: BenchJob) => BenchCircuit;
}

const always = (): boolean => true;
const onWinding = ({ feed }: BenchJob): boolean => feed.kind === 'winding';
const topologyOf = ({ feed }: BenchJob) => (feed.kind === 'winding' ? feed.chain.topology : undefined);
const regulated = ({ feed }: BenchJob): boolean => (feed.kind === 'winding' ? feed.chain.stage : feed.stage).kind !== 'none';
const bothHalves = (job: BenchJob): boolean => topologyOf(job) === 'bridge' || topologyOf(job) === 'centre-tap';

/**
 * The bench sheet's causes, each the built circuit with one thing changed. Where a fault comes in degrees the range is what is met at
 * the bench (assumed): dried electrolytics of 5 to 40 % of their capacitance, joints that starve the regulator just so or badly.
 */
export const CAUSES: readonly Cause[] = [
  {
    id: 'nothing-wrong', words: 'Nothing: parts within their tolerances.', confirm: 'Repeat the reading that is furthest off with another meter.',
    applies: always, change: (circuit) => circuit,
  },
  {
    id: 'open-diode', words: 'A rectifier diode is open, or not soldered: half of each cycle is missing.', confirm: 'Ripple at the mains frequency instead of twice it; then the diode test on each, power off.',
    applies: bothHalves,
    change: (circuit, _, job) => throughSupply(circuit, (supply) => {
      // What is left of a bridge is one path through two diodes; of a centre tap, one half with one.
      const inSeries = topologyOf(job) === 'bridge' ? 2 : 1;
      const { diode } = supply;
      return { ...supply, topology: 'half-wave', diode: { ...diode, emission: diode.emission * inSeries, ohms: diode.ohms * inSeries } };
    }),
  },
  {
    id: 'shorted-diode', words: 'A rectifier diode is shorted: the winding is shorted for half of each cycle.', confirm: 'Switch off at once. Diode test on each, power off.', harm: 'fire',
    applies: bothHalves, change: (circuit) => withDefect(circuit, 'shorted-diode'),
  },
  {
    id: 'dried-reservoir', words: 'The reservoir has dried out: little of its capacitance is left.', confirm: 'A known good capacitor across it, fitted with the power off, brings the ripple down.',
    applies: onWinding, change: (circuit, degree) => reservoirScaled(circuit, byRatio(degree, 0.4, 0.05), byDegree(degree, 2, 6)),
  },
  {
    id: 'high-esr', words: 'The reservoir’s series resistance has risen, or its joint is poor.', confirm: 'Steps at the charging pulses on the scope where a sawtooth should be; an ESR meter, power off.',
    applies: onWinding, change: (circuit, degree) => reservoirScaled(circuit, 0.85, byRatio(degree, 8, 40)),
  },
  {
    id: 'missing-reservoir', words: 'The reservoir is missing or unconnected.', confirm: 'The rectified half-waves reach down to nothing on the scope.',
    applies: (job) => bothHalves(job) || topologyOf(job) === 'half-wave', change: (circuit) => withDefect(circuit, 'missing-reservoir'),
  },
  {
    id: 'dropout', words: 'The input does not suffice, and the regulator drops out: too much resistance before the rectifier (a joint, a connector, a winding too soft).', confirm: 'Valley against output on two channels; then volts along the winding’s own leads and joints, under load.',
    applies: onWinding, change: (circuit, degree) => starved(circuit, byDegree(degree, 1, 1.6)),
  },
  {
    id: 'heavy-load', words: 'The load draws far more than the list says.', confirm: 'Rail current with each load unplugged in turn.',
    applies: always, change: (circuit, degree) => ({ ...circuit, siemens: circuit.siemens * byDegree(degree, 1.4, 2.5) }),
  },
  {
    id: 'low-tap', words: 'A tap or a secondary of too few volts, or a primary joined for higher mains.', confirm: 'The winding unloaded, against its label, at the mains of the day.',
    // Fewer turns: ohms fall about as the volts do.
    applies: onWinding, change: (circuit, degree) => sourceScaled(circuit, byDegree(degree, 0.88, 0.5), byDegree(degree, 0.88, 0.5)),
  },
  {
    id: 'high-tap', words: 'A tap or a secondary of too many volts, or a primary joined for lower mains.', confirm: 'The winding unloaded, against its label; then the reservoir’s rated volts against what is on it.', harm: 'damage',
    applies: onWinding, change: (circuit, degree) => sourceScaled(circuit, byDegree(degree, 1.13, 1.6), byDegree(degree, 1.13, 1.6)),
  },
  { id: 'low-mains', words: 'The mains is low.', confirm: 'Mains at the amp.', applies: always, change: (circuit, degree) => mainsScaled(circuit, byDegree(degree, 0.93, 0.8)) },
  {
    id: 'second-ground', words: 'The winding is grounded as well as the rail: a part of it is shorted through a diode.', confirm: 'Switch off at once. Ohms from each end and the middle of the winding to chassis, power off.', harm: 'fire',
    applies: bothHalves, change: (circuit) => withDefect(circuit, 'second-ground'),
  },
  {
    id: 'pulses-in-ground', words: 'The rail’s ground leaves from the wrong side of the reservoir: charging pulses run along it.', confirm: 'Move the ground wire to the reservoir’s own negative.', harm: 'noise',
    applies: (job) => onWinding(job) && job.groundWire !== undefined,
    change: (circuit) => (circuit.groundWire === undefined ? circuit : { ...circuit, groundWire: { ...circuit.groundWire, carriesPulses: true } }),
  },
  {
    id: 'slow-release', words: 'The relay lets go slowly: a bare diode across its coil instead of what was planned.', confirm: 'Volts on the driver at release: a diode’s drop above the rail, or far more.',
    applies: ({ coil }) => coil !== undefined && coil.suppression.kind !== 'diode',
    change: (circuit) => (circuit.coil === undefined ? circuit : { ...circuit, coil: { ...circuit.coil, suppression: { kind: 'diode' } } }),
  },
  {
    id: 'hot-regulator', words: 'The regulator does not get rid of its heat: a loose screw, no pad or compound, a sink left off.', confirm: 'Tab against sink temperature; power off, then the screw.',
    applies: regulated, change: (circuit, degree) => withoutSink(circuit, byDegree(degree, 1.2, 3)),
  },
  {
    id: 'low-regulator', words: 'A regulator of fewer volts than planned, or the wrong divider at an adjustable one.', confirm: 'Read the part’s number.',
    applies: regulated, change: (circuit, degree) => outputScaled(circuit, byDegree(degree, 0.88, 0.4)),
  },
  {
    id: 'high-regulator', words: 'A regulator of more volts than planned, or the wrong divider at an adjustable one.', confirm: 'Read the part’s number; unplug the load first.', harm: 'damage',
    applies: regulated, change: (circuit, degree) => outputScaled(circuit, byDegree(degree, 1.13, 2)),
  },
  {
    id: 'cold-heaters', words: 'The heaters hold the supply in its current limit, or it folds back: they never get hot.', confirm: 'Rail volts and current with the heaters unplugged; look for glow.',
    applies: (job) => job.load.heater !== undefined && (regulated(job) || job.feed.kind === 'converter'),
    change: (circuit, degree, job) => (job.load.heater === undefined ? circuit : heatersStuck(circuit, { heater: job.load.heater, railVolts: designVolts(job), share: byDegree(degree, 0.9, 0.55) })),
  },
];
