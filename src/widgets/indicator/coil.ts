import { checkCoilPullIn, checkCoilVolts } from '../../compute/findings/coil.ts';
import { droppedCoils } from '../../compute/parts/coil-on-rail.ts';
import { coilDropper, relayOfKind } from '../../compute/parts/relay.ts';
import { workingStep } from '../../compute/supplies/working.ts';
import { coilCheckFace } from '../coil-check/fields.ts';
import { levelOfRule } from '../shared/chain-view.ts';
import { handOn } from '../shared/hand-links.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import type { Values } from './fields.ts';
import { resistorOf, type Outcome } from './outcome.ts';

/** The class that a coil of unknown make is taken for; its rise per watt is assumed. */
const KIND = 'power-400';

/** Relay coils of fewer volts than the rail, behind one resistor. */
export function coilOutcome(values: Values): Outcome {
  const { coils, coilVolts, railVolts, railSpread, airCelsius } = values;
  const coil = relayOfKind({ kind: KIND, ratedVolts: coilVolts, ohms: values.coilOhms });
  const exact = coilDropper({ coil, railVolts, coils });
  const ohms = resistorOf(values, Math.max(exact.ohms, 0.01), 'nearest');
  const lowestVolts = railVolts * (1 - railSpread);
  const highestVolts = railVolts * (1 + railSpread);
  const { together, alone, usualVolts, resistorWatts } = droppedCoils({ coil, lowestVolts, highestVolts, nominalVolts: railVolts, coils, resistorOhms: ohms, airCelsius });
  const findings = [
    checkCoilPullIn({
      corner: `the lowest rail, ${coils === 1 ? 'a hot coil' : 'all coils on and hot'}`, restsOn: ['assumed'], coil: coils === 1 ? 'The relay' : 'The last relay',
      coilMinVolts: together.lowestAtCoil, operateVolts: together.operateVolts, ratedVolts: coilVolts, coilCelsius: together.coilCelsius,
    }),
    checkCoilVolts({
      corner: `the highest rail, ${coils === 1 ? 'a coil of most resistance' : 'one coil on alone'}`, restsOn: ['typical'], coil: coils === 1 ? 'The coil' : 'A coil on alone',
      coilMaxVolts: alone.highestAtCoil, limitVolts: alone.limitVolts,
    }),
  ];
  const range = Array.from({ length: 31 }, (_, at) => railVolts * (0.5 + at / 30));
  return {
    exactOhms: exact.ohms,
    ohms,
    watts: resistorWatts,
    corners: [
      { name: `low rail · ${showMarked(lowestVolts, 'V')}`, value: together.lowestAtCoil, unit: 'V', of: 'at the coil', level: levelOfRule(findings, 'coil-pull-in'), found: `hot, it needs ${showQuantity(together.operateVolts, 'V')}`, restsOn: 'assumed rise per watt' },
      { name: `nominal rail · ${showMarked(railVolts, 'V')}`, value: usualVolts, unit: 'V', of: 'at the coil', found: `cold, ${coils === 1 ? 'as marked' : 'all on'}` },
      { name: `high rail · ${showMarked(highestVolts, 'V')}`, value: alone.highestAtCoil, unit: 'V', of: 'at the coil', level: levelOfRule(findings, 'coil-volts'), found: `${coils === 1 ? '' : 'one on alone, '}bears ${showQuantity(alone.limitVolts, 'V')}`, restsOn: 'typical of a 400 mW relay' },
    ],
    findings,
    working: [
      workingStep({
        name: 'resistor', words: 'The volts that the coils must not get, over the current they take.', formula: 'R = (V − Vr) × Rc / (n × Vr)',
        numbers: [{ symbol: 'V', value: railVolts, unit: 'V' }, { symbol: 'Vr', value: coilVolts, unit: 'V' }, { symbol: 'Rc', value: coil.ohms, unit: 'Ω' }, { symbol: 'n', value: coils, unit: '' }],
        result: { symbol: 'R', value: exact.ohms, unit: 'Ω' }, source: { id: 'arithmetic' },
      }),
      workingStep({
        name: 'heat', words: 'Most heat in it: highest rail, coils of least resistance, all on.', formula: 'P = (Vh / (Rl / n + R))² × R',
        numbers: [{ symbol: 'Vh', value: highestVolts, unit: 'V' }, { symbol: 'Rl', value: coil.ohms * (1 - coil.tolerance), unit: 'Ω' }, { symbol: 'n', value: coils, unit: '' }, { symbol: 'R', value: ohms, unit: 'Ω' }],
        result: { symbol: 'P', value: resistorWatts, unit: 'W' }, source: { id: 'arithmetic' },
      }),
    ],
    plot: {
      caption: 'What each coil gets as the rail moves, all on and hot, against what is sure to pull it in again.',
      x: { name: 'rail', unit: 'V', values: range },
      series: [
        { name: 'at the coil', kind: 'volts', unit: 'V', values: range.map((volts) => (volts * together.lowestAtCoil) / lowestVolts) },
        { name: 'sure to pull in from', kind: 'needed', unit: 'V', values: range.map(() => together.operateVolts) },
      ],
      markAt: railVolts,
    },
    handOn: [
      handOn(coilCheckFace, {
        what: `${showMarked(coilVolts, 'V')} behind ${showMarked(ohms * coils, 'Ω')}`,
        given: { ratedVolts: coilVolts, ohms: coil.ohms, lowestVolts: Math.max(2, lowestVolts), highestVolts: Math.min(80, highestVolts), seriesOhms: Math.max(1, ohms * coils), airCelsius },
      }),
    ],
    words: `${showQuantity(usualVolts, 'V')} at the coil${coils === 1 ? '' : 's with all on'}, ${showQuantity(together.lowestAtCoil, 'V')} to ${showQuantity(alone.highestAtCoil, 'V')} at worst`,
  };
}
