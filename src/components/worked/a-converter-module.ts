import {
  analyseGrounding, converter, deratedOutput, groundingJob, loadDraw, ratingForHeaters, startConverter, startUpLimit, supplyFromConverter, yCapacitorAmps, yCapacitorFarads,
  type ConverterStart, type StartUpLimit,
} from '../../compute/index.ts';
import { TOUCH_RMS_AMPS, UNEARTHED_TOUCH_RMS_AMPS } from '../../compute/grounding/limits.ts';
import type { StartTraceProps } from '../../drawings/start-trace.tsx';
import { given, type Shop } from '../shop.ts';
import { figure, inWords, solved, worked, type Worked } from './worked.ts';

/** Sizes of module tried on the Tarn 45, rows of the catalogue. */
const SIZES = ['module-5w-12v', 'module-10w-12v', 'module-12w-12v'] as const;
const KINDS = ['hiccup', 'foldback', 'constant-current'] as const;
/** Longest start that is followed. */
const GIVEN_UP_SECONDS = 60;
const TRACE_SECONDS = 30;
/** A module of another make, for the quiz. */
const OTHER = { id: 'module-10w-12v', airCelsius: 65, yFarads: 2.2e-9, mainsVolts: 230, hertz: 50 };
/** The reservoir that somebody carries over from a rectifier to a converter's output; supposed. */
const CARRIED_FARADS = 4700e-6;

/** Everything that lesson 12 says of a converter in the Fennel 100, and of one that the Tarn 45's heaters keep from starting. */
export function work(shop: Shop): Worked<string> & { readonly trace: Omit<StartTraceProps, 'id' | 'title'> } {
  const job = shop.fennel100;
  const supply = supplyFromConverter(job);
  const module = given(supply.converter, 'a converter for the Fennel 100');
  const { part } = module;
  const grounding = given(groundingJob(job, supply), 'a rail to ground');
  const leaking = (connections: Partial<typeof grounding.connections>) =>
    given(analyseGrounding({ ...grounding, connections: { ...grounding.connections, ...connections } }).leakage, 'leakage into a hand');
  const floating = leaking({ rail: { kind: 'floating' } });
  const unearthed = leaking({ ampEarth: 'absent' });
  const handAmps = (reading: typeof floating): number => given(reading.hand, 'a hand').acAmps;
  const derated = (id: string, airCelsius: number): number => deratedOutput({ part: converter(id), airCelsius }).amps;

  const tarn = shop.tarn45;
  const draw = loadDraw(tarn);
  const heater = given(draw.heater, 'heaters on the Tarn 45');
  const everything = draw.chain.everythingAmps;
  const start = (id: string, kind: StartUpLimit['kind'], otherAmps: number): ConverterStart => {
    const row = converter(id);
    return startConverter({ setVolts: row.outputVolts, limit: startUpLimit({ part: row, kind }), heater, loadOhms: tarn.rail.volts / otherAmps, seconds: GIVEN_UP_SECONDS });
  };
  const relaysOn = everything - heater.amps;
  const say = ({ starts, seconds, tries, volts }: ConverterStart): string =>
    starts ? `${solved(seconds, 's', 2).text}${tries > 1 ? `, ${tries} tries` : ''}`
    : volts > 0 ? `never: sits at ${solved(volts, 'V', 2).text}`
    : 'never: it goes on trying';
  const starts = Object.fromEntries(SIZES.map((id) => [id, Object.fromEntries(KINDS.map((kind) => [kind, start(id, kind, relaysOn)])) as Record<(typeof KINDS)[number], ConverterStart>]));
  const tarnModule = given(supplyFromConverter(tarn).converter, 'a converter for the Tarn 45');
  const chosen = given(starts['module-12w-12v'], 'the starts of the 12 W module');
  const table = Object.fromEntries(SIZES.flatMap((id, row) => KINDS.map((kind, column): [string, string] => [`start${row}${column}`, say(given(starts[id], id)[kind])])));
  const onlyHeaters = start('module-12w-12v', 'hiccup', draw.otherAmps);
  const ratings = ratingForHeaters({ runningAmps: everything, limit: 'hiccup' });

  const figures = {
    rail: figure(job.rail.volts, 'V'),
    dc: figure(module.loadAmps.everything, 'A'),
    air: figure(job.amp.airCelsius, '°C'),
    rated: figure(part.ratedAmps, 'A'),
    ratedWatts: figure(part.ratedWatts, 'W'),
    derated: figure(module.derated.amps, 'A'),
    share: solved(module.loadingRatio, '%', 2),
    at50: figure(derated(part.id, 50), 'A'),
    at70: figure(derated(part.id, 70), 'A'),
    heat: solved(module.moduleWatts, 'W', 2),
    inside: solved(job.mains.highVolts * Math.SQRT2, 'V', 2),
    mains: figure(job.mains.nominalVolts, 'V'),
    highMains: figure(job.mains.highVolts, 'V'),
    railMin: solved(module.railMinVolts, 'V'),
    railMax: solved(module.railMaxVolts, 'V'),
    mostFarads: figure(part.maxLoadFarads, 'F'),
    carried: figure(CARRIED_FARADS, 'F'),
    leakage: solved(module.leakageAmps, 'A', 2),
    printed: figure(part.leakageAmps, 'A'),
    yFarads: solved(yCapacitorFarads({ leakageAmps: part.leakageAmps }), 'F', 2),
    meter: solved(floating.acVolts, 'V', 2),
    half: figure(job.mains.nominalVolts / 2, 'V'),
    hand: solved(handAmps(floating), 'A', 2),
    unearthedHand: solved(handAmps(unearthed), 'A', 2),
    limit: figure(TOUCH_RMS_AMPS.value, 'A'),
    strictLimit: figure(UNEARTHED_TOUCH_RMS_AMPS.value, 'A'),
    watts0: figure(converter(SIZES[0]).ratedWatts, 'W'),
    watts1: figure(converter(SIZES[1]).ratedWatts, 'W'),
    watts2: figure(converter(SIZES[2]).ratedWatts, 'W'),
    tarnDc: figure(everything, 'A'),
    tarnAir: figure(tarn.amp.airCelsius, '°C'),
    tarnShare: solved(tarnModule.loadingRatio, '%', 2),
    tarnModule: figure(tarnModule.part.ratedWatts, 'W'),
    tarnLimit: solved(tarnModule.part.ratedAmps * tarnModule.part.overloadRatio, 'A', 2),
    tarnCold: solved(chosen.hiccup.coldDemandRatio * tarnModule.part.ratedAmps * tarnModule.part.overloadRatio, 'A', 2),
    hiccupSeconds: solved(chosen.hiccup.seconds, 's', 2),
    steadySeconds: solved(chosen['constant-current'].seconds, 's', 2),
    onlyHeaters: solved(onlyHeaters.seconds, 's', 2),
    wantedLeast: solved(ratings.least, 'A', 2),
    otherAir: figure(OTHER.airCelsius, '°C'),
    otherRated: figure(converter(OTHER.id).ratedAmps, 'A'),
    otherWatts: figure(converter(OTHER.id).ratedWatts, 'W'),
    otherY: figure(OTHER.yFarads, 'F'),
    otherMains: figure(OTHER.mainsVolts, 'V'),
    otherHertz: figure(OTHER.hertz, 'Hz'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;
  const course = (name: string, { seconds, volts }: ConverterStart['trace'], outcome: string) => ({ name, seconds, volts, outcome });

  return {
    ...worked({
      figures,
      names: { ...table, tries: String(chosen.hiccup.tries), relays: inWords(tarn.loads.find((item) => item.kind === 'relay')?.count ?? 0), functions: inWords(job.loads[0]?.count ?? 0) },
      asked: ['meter', 'hand', 'unearthedHand', 'strictLimit', 'tarnDc', 'tarnModule', 'tarnCold', 'tarnLimit', 'tries', 'hiccupSeconds', 'steadySeconds', 'otherAir', 'otherRated', 'otherWatts', 'otherY', 'otherMains', 'otherHertz', 'mostFarads', 'carried'],
      answers: { 'hot-strip': derated(OTHER.id, OTHER.airCelsius), 'y-current': yCapacitorAmps({ farads: OTHER.yFarads, mainsVolts: OTHER.mainsVolts, hertz: OTHER.hertz }) },
      opened: {},
      steps: [
        { ask: 'What may the module give in this air?', words: 'Its rating, and the curve of its sheet at the hottest air of the strip.', sum: `${text('rated')} becomes ${text('derated')} at ${text('air')}` },
        { ask: 'How far is it loaded?', words: 'Everything on, against that.', sum: `${text('dc')} / ${text('derated')} = ${text('share')}` },
        { ask: 'Does it start?', words: 'Three coils and three couplers ask for no more cold than hot, to speak of.', sum: 'at once' },
        { ask: 'Is the rail within the coils’ range?', words: 'Tolerance and ripple together; lesson 6 has the coils.', sum: `${text('railMin')} to ${text('railMax')}` },
        { ask: 'How much capacitance may hang on it?', words: 'A filter’s capacitors count. No reservoir is wanted: the converter fills its own.', sum: `${text('mostFarads')} at most`, left: true },
        { ask: 'What leaks into the rail?', words: 'The printed leakage, brought to this mains. It goes home through the one bond.', sum: `${text('printed')} at 230 V becomes ${text('leakage')} at ${text('highMains')}`, left: true },
      ],
    }),
    trace: {
      setVolts: tarnModule.part.outputVolts,
      setText: figure(tarnModule.part.outputVolts, 'V').text,
      endSeconds: TRACE_SECONDS,
      endText: figure(TRACE_SECONDS, 's').text,
      courses: [
        course('Hiccup', chosen.hiccup.trace, `up after ${text('hiccupSeconds')}, ${chosen.hiccup.tries} tries`),
        course('Constant current', chosen['constant-current'].trace, `up after ${text('steadySeconds')}`),
      ],
    },
  };
}
