import { InputError, requireNumber } from '../errors.ts';
import type { Finding } from '../findings.ts';
import { figure, finding, say } from '../findings/check.ts';
import { GROUND } from '../network/elements.ts';
import type { Element } from '../network/elements.ts';
import { solveTransient } from '../network/solve-transient.ts';
import { diodePart } from '../parts/diode.ts';
import type { Suppression } from '../parts/suppression.ts';

/** What takes a coil's current when its driver opens: as in the parts, and a resistor and capacitor in series across the coil. */
export type CoilSuppression = Suppression | { readonly kind: 'resistor-capacitor'; readonly ohms: number; readonly farads: number };

export interface CoilReleaseInTime {
  /** Time zero is the driver's opening. */
  readonly waveform: { readonly seconds: Float64Array; readonly coilAmps: Float64Array; readonly driverVolts: Float64Array };
  /** From the opening until the coil's current is below each share of its running current for good; left out where it is not within the time. */
  readonly release: readonly { readonly ratio: number; readonly seconds?: number }[];
  /** Most across the driver. */
  readonly peakDriverVolts: number;
  /** Stored at the opening, and turned to heat in the driver itself. */
  readonly joules: number;
  readonly driverJoules: number;
  readonly findings: readonly Finding[];
}

/** Shares of the running current at which relays let go: must-release, and where most do. */
const RELEASE_RATIOS = [0.1, 0.25, 0.35] as const;
/** Small switching transistors break down from here; typical of 40 V types. */
const BREAKDOWN_VOLTS = 60;
/** Between the turns of a coil: it turns the step into a ramp. Assumed. */
const COIL_FARADS = 100e-12;

function suppressionElements(suppression: CoilSuppression): Element[] {
  const model = diodePart('1n400x').typical;
  const junction = { saturationAmps: model.saturationAmps, emission: model.emission, ohms: model.ohms };
  switch (suppression.kind) {
    case 'none':
      return [];
    case 'diode':
      return [{ kind: 'diode', name: 'suppressor', between: ['driver', 'rail'], ...junction }];
    case 'diode-zener':
      return [
        { kind: 'diode', name: 'suppressor', between: ['driver', 'clamp'], ...junction },
        // The zener's cathode faces the driver's side: it is driven backwards.
        { kind: 'diode', name: 'zener', between: ['rail', 'clamp'], ...junction, breakdownVolts: requireNumber('suppression.volts', suppression.volts, { min: 1, max: 1000 }) },
      ];
    case 'resistor':
      return [{ kind: 'resistor', name: 'suppressor', between: ['driver', 'rail'], ohms: requireNumber('suppression.ohms', suppression.ohms, { min: 0.1, max: 1e6 }) }];
    case 'resistor-capacitor':
      return [{
        kind: 'capacitor', name: 'suppressor', between: ['driver', 'rail'],
        farads: requireNumber('suppression.farads', suppression.farads, { min: 1e-10, max: 1e-3 }),
        ohms: requireNumber('suppression.ohms', suppression.ohms, { min: 0.1, max: 1e6 }),
      }];
    default:
      throw new InputError('suppression', suppression, { expected: 'none, diode, diode-zener, resistor or resistor-capacitor' });
  }
}

/** Last moment at which the magnitude is still above a level; undefined when it is so at the very end. */
function belowForGood(values: Float64Array, seconds: Float64Array, level: number): number | undefined {
  let last = values.length - 1;
  if (Math.abs(values[last] as number) > level) return undefined;
  while (last > 0 && Math.abs(values[last - 1] as number) <= level) last -= 1;
  if (last === 0) return 0;
  const above = Math.abs(values[last - 1] as number);
  const below = Math.abs(values[last] as number);
  const [t0, t1] = [seconds[last - 1] as number, seconds[last] as number];
  return above === below ? t1 : t0 + ((t1 - t0) * (above - level)) / (above - below);
}

/**
 * A coil let go by a transistor, solved in time with what is fitted across it: coil current, volts on the driver, and how
 * long the coil keeps enough current to hold.
 *
 * The inductance is that with the armature in and stays so, though it falls as the armature leaves: times are indicative
 * and rather long. The driver opens at once and breaks down at `breakdownVolts` (60 V when left out, typical of small
 * transistors); without suppression that is what ends the kick, and is named a hazard. A bare contact would arc instead.
 * With a diode the drop is a silicon diode's solved one, so times differ by a few per cent from those with a fixed 0.8 V.
 * Henries 1e-6 to 100, ohms 1 to 1e6, rail 0.5 to 200 V. Throws `InputError` outside, `SolveError` as the solver.
 */
export function releaseCoil(options: {
  readonly henries: number;
  readonly ohms: number;
  readonly railVolts: number;
  readonly suppression: CoilSuppression;
  readonly breakdownVolts?: number;
  readonly maxPoints?: number;
}): CoilReleaseInTime {
  const { suppression, maxPoints = 1500 } = options;
  const henries = requireNumber('henries', options.henries, { min: 1e-6, max: 100 });
  const ohms = requireNumber('ohms', options.ohms, { min: 1, max: 1e6 });
  const railVolts = requireNumber('railVolts', options.railVolts, { min: 0.5, max: 200 });
  const breakdownVolts = requireNumber('breakdownVolts', options.breakdownVolts ?? BREAKDOWN_VOLTS, { min: railVolts + 1, max: 2000 });
  const startAmps = railVolts / ohms;
  const model = diodePart('1n400x').typical;
  const ringing = suppression.kind === 'resistor-capacitor' ? 20 * Math.sqrt(henries * suppression.farads) : 0;
  const seconds = Math.max((5 * henries) / ohms, ringing);
  const elements: Element[] = [
    { kind: 'dc', name: 'supply', between: ['rail', GROUND], volts: railVolts },
    { kind: 'inductor', name: 'coil', between: ['rail', 'driver'], henries, ohms, initialAmps: startAmps },
    { kind: 'capacitor', name: 'turns', between: ['driver', GROUND], farads: COIL_FARADS, initialVolts: 0 },
    // The driver once it has opened: nothing, until it breaks down.
    { kind: 'diode', name: 'driver breakdown', between: [GROUND, 'driver'], saturationAmps: model.saturationAmps, emission: model.emission, ohms: 1, breakdownVolts },
    ...suppressionElements(suppression),
  ];
  const startsCharged = suppression.kind === 'resistor-capacitor';
  const solution = solveTransient({ elements, seconds, maxPoints, ...(startsCharged ? { initial: { suppressor: -railVolts } } : {}) });
  const coilAmps = solution.amps['coil'] as Float64Array;
  const driverVolts = solution.volts['driver'] as Float64Array;
  const times = solution.seconds;
  let driverJoules = 0;
  const throughDriver = solution.amps['driver breakdown'] as Float64Array;
  for (let k = 1; k < times.length; k += 1) {
    const watts = -(((throughDriver[k - 1] as number) + (throughDriver[k] as number)) / 2) * (((driverVolts[k - 1] as number) + (driverVolts[k] as number)) / 2);
    driverJoules += Math.max(0, watts) * ((times[k] as number) - (times[k - 1] as number));
  }
  const peakDriverVolts = driverVolts.reduce((most, volts) => Math.max(most, volts), 0);
  const joules = (henries * startAmps * startAmps) / 2;
  return {
    waveform: { seconds: times, coilAmps, driverVolts },
    release: RELEASE_RATIOS.map((ratio) => {
      const at = belowForGood(coilAmps, times, ratio * startAmps);
      return { ratio, ...(at === undefined ? {} : { seconds: at }) };
    }),
    peakDriverVolts,
    joules,
    driverJoules,
    findings: kickFindings({ suppression, peakDriverVolts, breakdownVolts, driverJoules }),
  };
}

function kickFindings(options: { readonly suppression: CoilSuppression; readonly peakDriverVolts: number; readonly breakdownVolts: number; readonly driverJoules: number }): readonly Finding[] {
  const { suppression, peakDriverVolts, breakdownVolts, driverJoules } = options;
  const bare = suppression.kind === 'none';
  const broken = peakDriverVolts >= 0.98 * breakdownVolts;
  const level = bare || broken ? 'hazard' : peakDriverVolts > 0.8 * breakdownVolts ? 'marginal' : 'within';
  return [
    finding({
      rule: 'coil-kick', level,
      context: { corner: 'coil released from its running current', restsOn: ['assumed', 'typical'] },
      source: { id: 'solved' },
      what: broken
        ? `The coil drives the open transistor to ${say(peakDriverVolts, 'V')}, where it breaks down and takes ${say(driverJoules, 'J')} each time.`
        : `The coil takes the open transistor to ${say(peakDriverVolts, 'V')}; it breaks down from ${say(breakdownVolts, 'V')}.`,
      numbers: [figure('peak on the driver', peakDriverVolts, 'V'), figure('breakdown', breakdownVolts, 'V'), figure('heat in the driver', driverJoules, 'J')],
      why: bare
        ? 'A transistor that breaks down at every release fails sooner or later, often shorted, and the coil then stays on; through a bare contact the kick reaches a kilovolt.'
        : 'A transistor that comes near its breakdown has nothing left for a high rail or a hot day.',
      todo: level === 'within' ? 'Nothing.' : 'Fit a diode with a zener of about the rail’s volts across the coil, and a driver rated above rail, zener and diode together.',
      ...(level === 'hazard' ? { harm: 'damage' as const } : {}),
    }),
  ];
}
