import { TOUCH_LIMIT_VOLTS, bleedSeconds, bleederWatts, chainDiode, diodePart, fuseGates, fuseStandard, fuseTimes, shortCircuitAmps, solveRectifier, storedJoules } from '../../compute/index.ts';
import { given, type Shop } from '../shop.ts';
import { HAND_DC_OHMS, LEAK_OHMS, handRmsAmps, leftAfter, recovered, tarnLine, type LeftStanding } from './high-voltage.ts';
import { figure, solved, worked, type Figure, type Worked } from './worked.ts';

/** How long after the plug came out the readings of the table are taken. */
const LATER_SECONDS = 600;

/** A discharge through the shop's probe, hurried, and a break for tea. */
const PROBE = { probeOhms: 4700, probeSeconds: 1.1, waitSeconds: 600 };
const RECOVERED_SHARE = { usual: 0.1, most: 0.15 };

/** A finger ring with its two contacts. Supposed. */
const RING_OHMS = 0.01;

/** The reservoir of the quiz: another amp's, with the bleeder across it. */
const QUIZ = { farads: 100e-6, bleederOhms: 150e3 };

/** Stored energy that rules for electric vehicles let a person reach after a crash. */
const LOW_ENERGY_JOULES = 0.2;

const WHOLE: LeftStanding = { standby: 'closed', valves: 'hot', bleeder: 'whole', dropper: 'whole' };

/** A reading on a meter that shows whole volts. */
const meter = (volts: number): Figure => figure(Math.abs(volts) < 0.5 ? 0 : volts, 'V');

/** Everything that lesson 2 says of the Tarn 45, charged, unplugged and shorted. */
export function work(shop: Shop): Worked<string> & { readonly readings: { readonly first: string; readonly second: string; readonly preamp: string } } {
  const { amp, mains, parts } = shop.tarn45;
  const volts = given(amp.highTensionVolts, 'the high voltage of the Tarn 45');
  const heater = given(amp.heater, 'its heater winding');
  const spare = given(amp.spare, 'its spare winding');
  const reservoir = given(parts.reservoir, 'its low-voltage reservoir');
  const { firstFarads, secondFarads, preampFarads, bleederOhms, mainsFuse } = tarnLine;
  const allFarads = firstFarads + secondFarads + preampFarads;

  const left = (standing: Partial<LeftStanding>) => leftAfter({ volts, seconds: LATER_SECONDS, standing: { ...WHOLE, ...standing } });
  const usual = left({});
  const standbyOff = left({ standby: 'open' });
  const bleederGone = left({ valves: 'out', bleeder: 'open' });
  const dropperGone = left({ dropper: 'open' });
  const after = (share: number, linkOhms?: number): number => recovered({ volts, farads: firstFarads, share, ...PROBE, ...(linkOhms === undefined ? {} : { linkOhms }) });

  const shortAmps = shortCircuitAmps(heater);
  const ringAmps = heater.openCircuitVolts / (heater.ohms + RING_OHMS);
  const primaryAmps = (shortAmps * heater.openCircuitVolts) / mains.nominalVolts + given(amp.transformer?.presentVoltAmps, 'what its transformer carries') / mains.nominalVolts;
  const firstGate = given(fuseGates({ standard: fuseStandard(mainsFuse.standard), ratedAmps: mainsFuse.ratedAmps }).find(({ maxSeconds }) => maxSeconds !== undefined), 'a gate of its mains fuse');
  const fuse = fuseTimes({ standard: fuseStandard(mainsFuse.standard), ratedAmps: mainsFuse.ratedAmps, amps: primaryAmps });
  const diode = chainDiode(diodePart(given(parts.diode, 'its diodes')));
  const rail = solveRectifier({
    topology: 'bridge',
    winding: { openCircuitVolts: (spare.openCircuitVolts * mains.highVolts) / mains.nominalVolts, ohms: spare.ohms },
    hertz: mains.hertz,
    diode,
    reservoir: { farads: reservoir.farads, ohms: 0 },
    load: { amps: 1e-4 },
  }).rail.maxVolts;

  const figures = {
    highVolts: figure(volts, 'V'),
    first: figure(firstFarads, 'F'),
    all: figure(allFarads, 'F'),
    firstJoules: solved(storedJoules({ farads: firstFarads, volts }), 'J', 2),
    allJoules: solved(storedJoules({ farads: allFarads, volts }), 'J', 3),
    bleeder: figure(bleederOhms, 'Ω'),
    bleedTime: solved(bleedSeconds({ farads: allFarads, ohms: bleederOhms, fromVolts: volts }), 's', 2),
    bleederHeat: solved(bleederWatts({ ohms: bleederOhms, volts }), 'W', 2),
    touch: figure(TOUCH_LIMIT_VOLTS, 'V'),
    touchJoules: solved(storedJoules({ farads: firstFarads, volts: TOUCH_LIMIT_VOLTS }), 'J', 2),
    lowEnergyVolts: solved(Math.sqrt((2 * LOW_ENERGY_JOULES) / firstFarads), 'V', 2),
    lowEnergyTimes: solved(storedJoules({ farads: firstFarads, volts }) / LOW_ENERGY_JOULES, '', 2),
    leak: figure(volts / LEAK_OHMS, 'A', 2),
    leakTime: solved(bleedSeconds({ farads: firstFarads, ohms: LEAK_OHMS, fromVolts: volts }), 's', 2),
    later: figure(LATER_SECONDS, 's'),
    hand: figure(HAND_DC_OHMS, 'Ω'),
    handAmps: solved(volts / HAND_DC_OHMS, 'A'),
    handTime: solved(HAND_DC_OHMS * firstFarads, 's', 2),
    mains: figure(mains.nominalVolts, 'V'),
    mainsHand: solved(handRmsAmps({ volts: mains.nominalVolts, hertz: mains.hertz }), 'A', 2),
    usualFirst: meter(usual.first),
    usualSecond: meter(usual.second),
    usualPreamp: meter(usual.preamp),
    standbyFirst: meter(standbyOff.first),
    standbyHand: solved(standbyOff.first / HAND_DC_OHMS, 'A'),
    standbySecond: meter(standbyOff.second),
    standbyPreamp: meter(standbyOff.preamp),
    bleederFirst: meter(bleederGone.first),
    bleederSecond: meter(bleederGone.second),
    bleederPreamp: meter(bleederGone.preamp),
    dropperFirst: meter(dropperGone.first),
    dropperSecond: meter(dropperGone.second),
    dropperPreamp: meter(dropperGone.preamp),
    probe: figure(PROBE.probeOhms, 'Ω'),
    probeTime: figure(PROBE.probeSeconds, 's'),
    wait: figure(PROBE.waitSeconds, 's'),
    usualShare: figure(RECOVERED_SHARE.usual, '%'),
    mostShare: figure(RECOVERED_SHARE.most, '%'),
    recovered: solved(after(RECOVERED_SHARE.usual), 'V', 2),
    recoveredMost: solved(after(RECOVERED_SHARE.most), 'V', 2),
    recoveredLinked: solved(after(RECOVERED_SHARE.most, PROBE.probeOhms), 'V', 1),
    heaterVolts: figure(heater.openCircuitVolts, 'V'),
    heaterOhms: figure(heater.ohms, 'Ω'),
    shortAmps: solved(shortAmps, 'A', 2),
    ring: figure(RING_OHMS, 'Ω'),
    ringAmps: solved(ringAmps, 'A', 2),
    ringWatts: solved(ringAmps ** 2 * RING_OHMS, 'W', 2),
    primaryAmps: solved(primaryAmps, 'A', 2),
    fuseAmps: figure(mainsFuse.ratedAmps, 'A'),
    fuseMultiple: solved(primaryAmps / mainsFuse.ratedAmps, '', 2),
    fuseMust: figure(firstGate.multiple, ''),
    railReservoir: figure(reservoir.farads, 'F'),
    railPeak: solved(rail, 'V', 2),
    railJoules: solved(storedJoules({ farads: reservoir.farads, volts: rail }), 'J', 2),
    quizVolts: figure(given(shop.fennel100.amp.highTensionVolts, 'the high voltage of the Fennel 100'), 'V'),
    quizFarads: figure(QUIZ.farads, 'F'),
    quizBleeder: figure(QUIZ.bleederOhms, 'Ω'),
  };
  if (fuse.maxSeconds !== undefined) throw new Error('lesson 2 says that this fuse need never open');
  const text = (name: keyof typeof figures): string => figures[name].text;
  const quizVolts = figures.quizVolts.value;

  return {
    ...worked({
      figures,
      names: {},
      asked: ['highVolts', 'touch', 'standbyFirst', 'standbyHand', 'handAmps', 'quizVolts', 'quizFarads', 'quizBleeder', 'recovered', 'recoveredMost', 'firstJoules', 'ringAmps', 'ringWatts', 'later', 'railReservoir', 'railPeak', 'railJoules', 'dropperPreamp'],
      answers: {
        'another-reservoir': storedJoules({ farads: QUIZ.farads, volts: quizVolts }),
        'its-bleeder': bleedSeconds({ farads: QUIZ.farads, ohms: QUIZ.bleederOhms, fromVolts: quizVolts }),
      },
      opened: {},
      steps: [
        {
          ask: 'What does the first reservoir hold?',
          words: 'Half the capacitance, times the square of the volts. Twice the volts is four times the energy.',
          sum: `½ × ${text('first')} × (${text('highVolts')})² = ${text('firstJoules')}`,
        },
        {
          ask: 'And all three together?',
          words: 'With the standby switch closed they stand side by side, so the capacitances add.',
          sum: `½ × ${text('all')} × (${text('highVolts')})² = ${text('allJoules')}`,
        },
        {
          ask: `How long does a whole bleeder need, down to ${text('touch')}?`,
          words: 'Resistance times capacitance, times the natural logarithm of the volts it has over the volts it may have.',
          sum: `${text('bleeder')} × ${text('all')} × ln(${text('highVolts')} / ${text('touch')}) = ${text('bleedTime')}`,
        },
        {
          ask: 'What does the bleeder burn while the amp plays?',
          words: 'Volts squared over ohms, every hour the amp is on. That heat is why it is often the first part to go open.',
          sum: `(${text('highVolts')})² / ${text('bleeder')} = ${text('bleederHeat')}`,
        },
        {
          ask: 'And if it has gone open?',
          words: `Then only the capacitor’s own leakage is left. Suppose ${text('leak')}, as in a good one.`,
          sum: `${figure(LEAK_OHMS, 'Ω').text} × ${text('first')} × ln(${text('highVolts')} / ${text('touch')}) = ${text('leakTime')}`,
        },
        {
          ask: 'What would a hand carry?',
          words: `At the first touch, through ${text('hand')}; it falls to a third in ${text('handTime')}, by which time most of the charge has gone through the arm.`,
          sum: `${text('highVolts')} / ${text('hand')} = ${text('handAmps')}`,
        },
      ],
    }),
    readings: { first: text('standbyFirst'), second: text('standbySecond'), preamp: text('standbyPreamp') },
  };
}
