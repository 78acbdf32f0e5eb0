import { capacitiveVolts, magneticVolts, ratedPrimaryAmps } from '../../compute/index.ts';
import { given, type Shop } from '../shop.ts';
import { handRmsAmps } from './high-voltage.ts';
import { tarnRail } from './tarn-spare.ts';
import { figure, solved, worked, type Worked } from './worked.ts';

/** The Fennel's mains entry as the apprentice wired it: from the cord's clamp to each terminal, and the wire he cut for it. Supposed. */
const LINE = { reachMetres: 0.05, wireMetres: 0.062 };
const EARTH = { reachMetres: 0.09, wireMetres: 0.097 };
/** How much further than the others the earth must let the cord slip. The shop's habit. */
const EARTH_LAST_METRES = 0.01;
/** A free end that comes off its terminal, and where the nearest part of the rail is. Supposed. */
const FREE_METRES = 0.04;
const NEAREST_METRES = 0.025;
/** From a mains wire to a relay's contact lead that lies beside it, and the grid behind that lead. Supposed. */
const STRAY_FARADS = 1e-12;
const GRID_OHMS = 1e6;
/** The loop of a grid's wire beside the winding's leads: along them, away from them, and how far off. Supposed. */
const LOOP = { metres: 0.15, widthMetres: 0.01, distanceMetres: 0.02 };
/** Two insulations side by side. */
const PAIR_METRES = 1.5e-3;
/** A small toroid: its VA, its volts per turn, and the loop that a bolt touching the chassis at both ends makes. Supposed. */
const TOROID = { voltAmps: 25, turnVolts: 0.15, loopOhms: 1.5e-3 };
/** An electrolytic by the mains entry, and one beside an output valve. Typical of what is measured. */
const COOL_CELSIUS = 55;
const HOT_CELSIUS = 75;
/** For the quiz. */
const OTHER = { reachMetres: 0.07, wireMetres: 0.085 };

const slack = ({ reachMetres, wireMetres }: { readonly reachMetres: number; readonly wireMetres: number }): number => wireMetres - reachMetres;

/** Everything that lesson 20 says of the Fennel's mains entry and of what a rail's wires do to the amp around them. */
export function work(shop: Shop): Worked<string> & { readonly slackTexts: { readonly lineText: string; readonly earthText: string } } {
  const { mains } = shop.fennel100;
  const rms = given(tarnRail(shop.tarn45).chain.worst, 'a worst corner of the Tarn 45').windingCurrent.rectifier.winding.rmsAmps;
  const pulseHertz = 2 * shop.tarn45.mains.hertz;
  const single = magneticVolts({ amps: rms, hertz: pulseHertz, ...LOOP });
  const pair = magneticVolts({ amps: rms, hertz: pulseHertz, ...LOOP, returnSpacingMetres: PAIR_METRES });
  const turnAmps = TOROID.turnVolts / TOROID.loopOhms;
  // One turn on the core stands for the primary's current as one to all of its turns.
  const turnPrimary = (turnAmps * TOROID.turnVolts) / mains.nominalVolts;
  const primary = ratedPrimaryAmps({ voltAmps: TOROID.voltAmps, mainsVolts: mains.nominalVolts });
  const earthNeeded = EARTH.reachMetres + slack(LINE) + EARTH_LAST_METRES;

  const figures = {
    mains: figure(mains.nominalVolts, 'V'),
    lineReach: figure(LINE.reachMetres, 'm'),
    lineWire: figure(LINE.wireMetres, 'm'),
    lineSlack: solved(slack(LINE), 'm', 2),
    earthReach: figure(EARTH.reachMetres, 'm'),
    earthWire: figure(EARTH.wireMetres, 'm'),
    earthSlack: solved(slack(EARTH), 'm', 1),
    earthNeeded: solved(earthNeeded, 'm'),
    earthLast: figure(EARTH_LAST_METRES, 'm'),
    free: figure(FREE_METRES, 'm'),
    nearest: figure(NEAREST_METRES, 'm'),
    mainsHand: solved(handRmsAmps({ volts: mains.nominalVolts, hertz: mains.hertz }), 'A', 2),
    stray: figure(STRAY_FARADS, 'F'),
    grid: figure(GRID_OHMS, 'Ω'),
    strayVolts: solved(capacitiveVolts({ farads: STRAY_FARADS, volts: mains.nominalVolts, hertz: mains.hertz, ohms: GRID_OHMS }), 'V', 2),
    tarnRms: solved(rms, 'A', 2),
    loopAlong: figure(LOOP.metres, 'm'),
    loopWide: figure(LOOP.widthMetres, 'm'),
    loopOff: figure(LOOP.distanceMetres, 'm'),
    single: solved(single, 'V', 2),
    pair: solved(pair, 'V', 2),
    pairTimes: solved(single / pair, '', 2),
    toroid: figure(TOROID.voltAmps, 'VA'),
    turnVolts: figure(TOROID.turnVolts, 'V'),
    turnOhms: figure(TOROID.loopOhms, 'Ω'),
    turnAmps: solved(turnAmps, 'A', 2),
    turnWatts: solved(turnAmps * TOROID.turnVolts, 'W', 2),
    turnPrimary: solved(turnPrimary, 'A', 2),
    primary: solved(primary, 'A', 2),
    cool: figure(COOL_CELSIUS, '°C'),
    hot: figure(HOT_CELSIUS, '°C'),
    lifeTimes: solved(2 ** ((HOT_CELSIUS - COOL_CELSIUS) / 10), '', 1),
    quizReach: figure(OTHER.reachMetres, 'm'),
    quizWire: figure(OTHER.wireMetres, 'm'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return {
    ...worked({
      figures,
      names: {},
      asked: ['mains', 'mainsHand', 'earthWire', 'earthReach', 'lineWire', 'lineReach', 'quizReach', 'quizWire', 'earthLast', 'strayVolts', 'turnAmps', 'turnWatts', 'toroid', 'turnPrimary', 'primary', 'free', 'nearest'],
      answers: { 'cut-the-earth': EARTH.reachMetres + slack(OTHER) + EARTH_LAST_METRES },
      opened: {},
      steps: [
        { ask: 'How far may the cord slip before the line parts?', words: 'The wire’s length less the straight way to its terminal.', sum: `${text('lineWire')} − ${text('lineReach')} = ${text('lineSlack')}` },
        { ask: 'And the earth?', words: 'It is the longest wire in the entry. Its lug is further off still.', sum: `${text('earthWire')} − ${text('earthReach')} = ${text('earthSlack')}: it goes first` },
        { ask: 'How long should it have been?', words: `Its way, the line’s slack, and ${text('earthLast')} on top.`, sum: `${text('earthReach')} + ${text('lineSlack')} + ${text('earthLast')} = ${text('earthNeeded')}`, left: true },
        { ask: 'A mains wire comes off its terminal. Can it reach the rail?', words: `Its free end is ${text('free')}, the nearest part of the rail ${text('nearest')} away. A second fixing, or a barrier, decides this, and solder does not.`, sum: `${text('free')} against ${text('nearest')}: it can`, left: true },
      ],
    }),
    slackTexts: { lineText: text('lineSlack'), earthText: text('earthSlack') },
  };
}
