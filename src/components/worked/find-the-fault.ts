import { expectCause, rankCauses, CAUSES, type CauseId, type ExpectedOfCause, type TestPointId } from '../../compute/index.ts';
import { given, type Shop } from '../shop.ts';
import { quillonBench, range, spreads } from './quillon-bench.ts';
import { figure, solved, worked, type Worked } from './worked.ts';

/** Builds of each fault, from a mild case to a bad one. */
const BUILDS = 60;
/** What the shop read on the Quillon 20 that came back: supposed. */
const READ = { 'reservoir-mean': 19.2, 'reservoir-ripple': 1.9, 'ripple-frequency': 120, rail: 11.9, 'load-amps': 0.088, 'winding-open': 19.7 } as const;

/** Everything that lesson 22 says of faults on the Quillon 20's rail, each solved as the built circuit with one thing changed. */
export function work(shop: Shop): Worked<string> {
  const job = quillonBench(shop);
  const good = spreads(job);
  const expected = new Map<CauseId, ExpectedOfCause>(CAUSES.filter(({ applies }) => applies(job)).map((cause) => [cause.id, expectCause({ job, cause, samples: BUILDS })]));
  const mean = (id: CauseId, point: TestPointId): number => {
    const values = given(expected.get(id), `the fault ${id}`).builds.flatMap((build) => build[point] ?? []);
    return values.reduce((sum, each) => sum + each, 0) / values.length;
  };
  const v = (id: CauseId, point: TestPointId) => solved(mean(id, point), 'V', 3);
  const ranked = rankCauses({ expected: [...expected.values()].filter(({ builds }) => builds.length > 0), measured: READ });
  const first = given(ranked[0], 'a most likely cause');
  const second = given(ranked[1], 'a second cause');

  const figures = {
    dryMean: v('dried-reservoir', 'reservoir-mean'),
    dryRipple: v('dried-reservoir', 'reservoir-ripple'),
    openMean: v('open-diode', 'reservoir-mean'),
    openRipple: v('open-diode', 'reservoir-ripple'),
    openHertz: solved(mean('open-diode', 'ripple-frequency'), 'Hz', 2),
    dryHertz: solved(mean('dried-reservoir', 'ripple-frequency'), 'Hz', 3),
    tapOpen: v('low-tap', 'winding-open'),
    tapMean: v('low-tap', 'reservoir-mean'),
    loadMean: v('heavy-load', 'reservoir-mean'),
    loadAmps: solved(mean('heavy-load', 'load-amps'), 'A', 2),
    loadOpen: v('heavy-load', 'winding-open'),
    hotTab: solved(mean('hot-regulator', 'regulator-celsius'), '°C', 2),
    groundAmps: solved(mean('second-ground', 'winding-amps'), 'A', 2),
    goodAmps: solved(good('winding-amps').nominal, 'A', 2),
    groundHeat: solved((mean('second-ground', 'winding-amps') / good('winding-amps').nominal) ** 2, '', 2),
    readMean: figure(READ['reservoir-mean'], 'V'),
    readRipple: figure(READ['reservoir-ripple'], 'V'),
    readHertz: figure(READ['ripple-frequency'], 'Hz'),
    readRail: figure(READ.rail, 'V'),
    mains: figure(shop.quillon20.mains.hertz, 'Hz'),
    twice: figure(2 * shop.quillon20.mains.hertz, 'Hz'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return worked({
    figures,
    names: {
      goodMean: range(good('reservoir-mean'), 'V'),
      goodRipple: range(good('reservoir-ripple'), 'V', 2),
      goodTab: range(good('regulator-celsius'), '°C', 2),
      goodOpen: range(good('winding-open'), 'V'),
      firstCause: first.cause.words,
      firstId: first.cause.id,
      secondCause: second.cause.words,
      secondId: second.cause.id,
    },
    asked: ['openHertz', 'dryHertz', 'groundAmps', 'groundHeat'],
    answers: { 'ripple-hertz': shop.tarn45.mains.hertz },
    opened: {},
    steps: [
      { ask: 'Which readings are off?', words: 'Against the sheet: the mean is low, the ripple several times too large. Rail, load and open winding are where they belong.', sum: `${text('readMean')} against ${range(good('reservoir-mean'), 'V')}; ${text('readRipple')} against ${range(good('reservoir-ripple'), 'V', 2)}` },
      { ask: 'Which causes are left?', words: 'Large ripple with the right load: a reservoir with little left in it, or half of the cycle missing.', sum: 'dried reservoir, or open diode', left: true },
      { ask: 'Which one reading tells them apart?', words: 'The frequency of the ripple: half of the cycle missing would halve it.', sum: `${text('readHertz')}: both halves are there`, left: true },
      { ask: 'So?', words: 'Ranked against every fault that this rail can have, each solved over many builds. It ranks the faults it knows; be sure by its own proof.', sum: first.cause.words, left: true },
    ],
  });
}
