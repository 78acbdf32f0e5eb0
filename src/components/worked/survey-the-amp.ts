import amps from '../../../content/shop/amps.json';
import { HAND_HELD_METER, HAND_HELD_OHMMETER, temperatureRise, windingFromOhmmeter, windingFromReadings, type WindingReading } from '../../compute/index.ts';
import { TOUCH_RMS_VOLTS } from '../../compute/grounding/limits.ts';
import { given, type Shop } from '../shop.ts';
import { figure, solved, worked, type Worked } from './worked.ts';

/** The test load, and one too light to tell anything. */
const LOAD_OHMS = 10;
const LIGHT_OHMS = 150;

/** What a second meter showed on the mains while the load was on. */
const LOADED_MAINS = 229;

/** Of a winding's source resistance, the part that is its own copper. Supposed: the primary loses as much. */
const OWN_SHARE = 0.5;

/** Plug-top AC supplies as marked; a small one stands this much above its label unloaded. */
const PLUG_TOP = { small: 6, large: 12, backwards: 9, rise: 1.3 };

/** Primary of the quiz: cold with the room, and at once after two hours. */
const COPPER = { coldOhms: 4.2, coldCelsius: 21, hotOhms: 5.1, airCelsius: 30 };

/** Another winding, for the quiz. */
const QUIZ = { light: 19.6, loaded: 18.4, amps: 1.5 };

const rounded = (volts: number, step: number): number => Math.round(volts / step) * step;

/** Everything that lesson 4 says of the Tarn 45's two taped leads. */
export function work(shop: Shop): Worked<string> {
  const { amp, mains } = shop.tarn45;
  const winding = given(amp.spare, 'its spare winding');
  const heater = given(amp.heater, 'its heater winding');
  const nominal = mains.nominalVolts;
  const high = given(amps['tarn-45'].windings.find(({ kind }) => kind === 'high-voltage'), 'its high-voltage winding');
  const highEnds = high.volts * (high.centreTapped === true ? 2 : 1);

  /** What the meters show with a resistor across the winding. */
  const reading = (loadOhms: number, mainsVolts: number): WindingReading => {
    const open = (winding.openCircuitVolts * mainsVolts) / nominal;
    const current = open / (loadOhms + winding.ohms);
    return { volts: rounded(current * loadOhms, 0.01), amps: rounded(current, 0.001), mainsVolts };
  };
  const lighter: WindingReading = { volts: winding.openCircuitVolts, amps: 0, mainsVolts: nominal };
  const heavier = reading(LOAD_OHMS, LOADED_MAINS);
  const estimate = windingFromReadings({ lighter, heavier, nominalMainsVolts: nominal });
  const weak = windingFromReadings({ lighter, heavier: reading(LIGHT_OHMS, nominal), nominalMainsVolts: nominal });
  const ownOhms = rounded(winding.ohms * OWN_SHARE, 0.01);
  const metered = windingFromOhmmeter({ secondaryOhms: ownOhms, reading: lighter, nominalMainsVolts: nominal });
  const naiveOhms = (lighter.volts - heavier.volts) / heavier.amps;
  const upToMains = heavier.volts * (nominal / LOADED_MAINS);
  const upToAmps = heavier.amps * (nominal / LOADED_MAINS);

  const ratio = (plugTop: number, secondaryVolts: number): number => (plugTop * PLUG_TOP.rise * secondaryVolts) / nominal;
  const backwards = PLUG_TOP.backwards / heater.openCircuitVolts;
  const quizOhms = (QUIZ.light - QUIZ.loaded) / QUIZ.amps;
  const copper = temperatureRise(COPPER);

  const figures = {
    mains: figure(nominal, 'V'),
    highVolts: figure(given(amp.highTensionVolts, 'its high voltage'), 'V'),
    open: figure(lighter.volts, 'V'),
    loadOhms: figure(LOAD_OHMS, 'Ω'),
    loadedMains: figure(LOADED_MAINS, 'V'),
    loaded: figure(heavier.volts, 'V', 4),
    loadedAmps: figure(heavier.amps, 'A', 4),
    loadWatts: solved(heavier.volts * heavier.amps, 'W', 2),
    upVolts: solved(upToMains, 'V', 4),
    upAmps: solved(upToAmps, 'A', 4),
    step: solved(lighter.volts - upToMains, 'V', 2),
    ohms: solved(estimate.ohms.value, 'Ω', 2),
    ohmsLeast: solved(estimate.ohms.least, 'Ω', 2),
    ohmsMost: solved(estimate.ohms.most, 'Ω', 2),
    naive: solved(naiveOhms, 'Ω', 2),
    naiveError: solved(naiveOhms / estimate.ohms.value - 1, '%', 2),
    lightOhms: figure(LIGHT_OHMS, 'Ω'),
    lightAmps: solved(reading(LIGHT_OHMS, nominal).amps, 'A', 2),
    weakLeast: figure(weak.ohms.least, 'Ω', 2),
    weakMost: solved(weak.ohms.most, 'Ω', 2),
    ownOhms: figure(ownOhms, 'Ω'),
    meterCounts: figure(HAND_HELD_OHMMETER.ohmsCounts, 'Ω'),
    meteredLeast: solved(metered.ohms.least, 'Ω', 2),
    meteredMost: solved(metered.ohms.most, 'Ω', 2),
    drift: figure(HAND_HELD_METER.mainsDrift, '%'),
    small: figure(PLUG_TOP.small, 'V'),
    smallUnloaded: solved(PLUG_TOP.small * PLUG_TOP.rise, 'V', 2),
    smallSpare: solved(ratio(PLUG_TOP.small, winding.openCircuitVolts), 'V', 2),
    smallHigh: solved(ratio(PLUG_TOP.small, highEnds), 'V', 2),
    large: figure(PLUG_TOP.large, 'V'),
    largeHigh: solved(ratio(PLUG_TOP.large, highEnds), 'V', 2),
    touchAc: figure(TOUCH_RMS_VOLTS.value, 'V'),
    backwards: figure(PLUG_TOP.backwards, 'V'),
    backwardsMains: solved(backwards * nominal, 'V', 2),
    backwardsHigh: solved(backwards * highEnds, 'V', 2),
    coldOhms: figure(COPPER.coldOhms, 'Ω'),
    hotOhms: figure(COPPER.hotOhms, 'Ω'),
    coldAir: figure(COPPER.coldCelsius, '°C'),
    hotAir: figure(COPPER.airCelsius, '°C'),
    copperCelsius: solved(copper.windingCelsius, '°C', 2),
    copperRise: solved(copper.riseKelvin, '', 2),
    air: figure(amp.airCelsius, '°C'),
    quizLight: figure(QUIZ.light, 'V'),
    quizLoaded: figure(QUIZ.loaded, 'V'),
    quizAmps: figure(QUIZ.amps, 'A'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return worked({
    figures,
    names: { room: amps['tarn-45'].room },
    asked: ['quizLight', 'quizLoaded', 'quizAmps', 'highVolts', 'ownOhms', 'meterCounts', 'backwards', 'backwardsMains', 'backwardsHigh'],
    answers: { 'source-ohms': quizOhms },
    opened: {
      purpose: 'unknown',
      lighterVolts: lighter.volts,
      lighterAmps: 0,
      lighterMains: nominal,
      heavierVolts: heavier.volts,
      heavierAmps: heavier.amps,
      heavierMains: LOADED_MAINS,
      mainsVolts: nominal,
      mainsSpread: mains.highVolts / nominal - 1,
      ohmmeterOhms: ownOhms,
    },
    steps: [
      { ask: 'Bring both readings to the same mains', words: 'The mains had sunk while the load was on. Volts and amps of the loaded reading go up with it.', sum: `${text('loaded')} × ${text('mains')} / ${text('loadedMains')} = ${text('upVolts')}; ${text('upAmps')}` },
      { ask: 'How far did it sink under load?', words: 'Open-circuit volts less loaded volts, at the same mains.', sum: `${text('open')} − ${text('upVolts')} = ${text('step')}` },
      { ask: 'What is in the way?', words: 'The step in volts over the step in amps. The primary’s resistance is in it, as it should be.', sum: `${text('step')} / ${text('upAmps')} = ${text('ohms')}` },
      { ask: 'How sure is that?', words: 'Every error of a hand-held meter at its worst end. If the two limits are far apart, load it more.', sum: `${text('ohmsLeast')} to ${text('ohmsMost')}`, left: true },
      { ask: 'What would you have got without watching the mains?', words: 'The same sum with the readings as they stood.', sum: `(${text('open')} − ${text('loaded')}) / ${text('loadedAmps')} = ${text('naive')}: ${text('naiveError')} too high`, left: true },
    ],
  });
}
