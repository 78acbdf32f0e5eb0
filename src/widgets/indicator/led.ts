import type { Finding } from '../../compute/findings.ts';
import { checkLedCurrent, checkLedLit, checkLedReverse } from '../../compute/findings/indicator.ts';
import { ledCorners, type LedCorner } from '../../compute/parts/led-corners.ts';
import { ledAmps, ledResistor, ledResistorOnAc, ledRow, type LedRow } from '../../compute/parts/led.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import { loadList } from '../load-list/state.ts';
import { levelOfRule } from '../shared/chain-view.ts';
import { handOn } from '../shared/hand-links.ts';
import type { PlotData } from '../shared/plot-data.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import type { Values } from './fields.ts';
import { resistorOf, type Outcome } from './outcome.ts';

const isAc = ({ feed }: Values): boolean => feed === 'ac';
const supplyOf = (values: Values): number => (isAc(values) ? values.windingVolts : values.railVolts);

/** What a winding is joined to decides where its lamp's leads stand; nobody can see that from here. */
const windingReference: Finding = {
  rule: 'winding-reference', level: 'not assessed',
  what: 'What this winding is joined to is not known here.',
  numbers: [],
  why: 'A heater winding may be lifted to tens of volts, and a rectifier valve’s winding stands at the high voltage. A lamp on it brings that to the panel.',
  todo: 'Find out with the amp dead and proved dead. Leave a rectifier valve’s winding alone; use an insulated lamp holder on any other.',
  restsOn: ['assumed'], source: { id: 'iec-62368-1' },
};

function resistorStep(values: Values, led: LedRow, ohms: number): WorkingStep {
  const common = [{ symbol: 'n', value: values.inSeries, unit: '' } as const, { symbol: 'Vf', value: led.forwardVolts.typical, unit: 'V' } as const, { symbol: 'I', value: values.amps, unit: 'A' } as const];
  const result = { symbol: 'R', value: ohms, unit: 'Ω' } as const;
  return isAc(values)
    ? workingStep({
        name: 'resistor', words: 'The resistor for that mean current: the sine above the LEDs’ drop, averaged over the whole cycle.',
        formula: 'Mean of (√2 × V × sin − n × Vf) / I while it is above nought', numbers: [{ symbol: 'V', value: values.windingVolts, unit: 'V' }, ...common], result, source: { id: 'solved' },
      })
    : workingStep({
        name: 'resistor', words: 'What the LEDs leave of the rail, over the current wanted.',
        formula: 'R = (V − n × Vf) / I', numbers: [{ symbol: 'V', value: values.railVolts, unit: 'V' }, ...common], result, source: { id: 'typical-leds' },
      });
}

function plotOf(values: Values, led: LedRow, ohms: number): PlotData {
  if (isAc(values)) {
    const peak = values.windingVolts * Math.SQRT2;
    const angles = Array.from({ length: 121 }, (_, at) => at / 120);
    const volts = angles.map((part) => peak * Math.sin(2 * Math.PI * part));
    return {
      caption: 'One mains cycle: the lamp is lit only while the winding stands above its drop. The half-cycle below nought stands across it in reverse, unless a diode takes it.',
      x: { name: 'share of one mains cycle', unit: '%', values: angles },
      series: [
        { name: 'winding', kind: 'volts', unit: 'V', values: volts },
        { name: 'through the LED', kind: 'amps', unit: 'A', values: volts.map((each) => ledAmps({ railVolts: Math.max(0, each), forwardVolts: led.forwardVolts.typical, count: values.inSeries, ohms })) },
      ],
    };
  }
  const rails = Array.from({ length: 31 }, (_, at) => values.railVolts * (0.5 + at / 30));
  const amps = (forwardVolts: number): number[] =>
    rails.map((volts) => ledCorners({ feed: 'dc', volts, spread: 0, forwardVolts: { min: forwardVolts, typical: forwardVolts, max: forwardVolts }, count: values.inSeries, ohms }).nominal.amps);
  return {
    caption: 'The nearer the LEDs’ drop comes to the rail, the steeper these run, and the more each tenth of a volt shows.',
    x: { name: 'rail', unit: 'V', values: rails },
    series: [
      { name: 'LEDs of usual drop', kind: 'amps', unit: 'A', values: amps(led.forwardVolts.typical) },
      { name: 'LEDs of most drop', kind: 'other', unit: 'A', values: amps(led.forwardVolts.max) },
    ],
    markAt: values.railVolts,
  };
}

/** An LED or a string of them, on DC or on a winding. */
export function ledOutcome(values: Values): Outcome {
  const led = ledRow(values.colour);
  const { typical } = led.forwardVolts;
  const wanted = { forwardVolts: typical, amps: values.amps, count: values.inSeries };
  const antiparallel = values.across === 'diode';
  const exactOhms = isAc(values) ? ledResistorOnAc({ ...wanted, rmsVolts: values.windingVolts, antiparallel }).ohms : ledResistor({ ...wanted, railVolts: values.railVolts }).ohms;
  const ohms = resistorOf(values, exactOhms, 'up');
  const at = ledCorners({
    feed: values.feed, volts: supplyOf(values), spread: isAc(values) ? values.mainsSpread : values.railSpread, forwardVolts: led.forwardVolts, count: values.inSeries, ohms, antiparallel,
  });
  const name = isAc(values) ? 'mains' : 'rail';
  const context = { corner: `the highest ${name}, LEDs of least drop`, restsOn: ['typical'] as const };
  const findings = [
    checkLedCurrent({ ...context, amps: at.high.amps, ratedAmps: led.maxAmps }),
    checkLedLit({ ...context, corner: `the lowest ${name}, LEDs of most drop`, leastAmps: at.low.amps, usualAmps: at.nominal.amps }),
    ...(isAc(values) ? [checkLedReverse({ ...context, reverseVolts: at.high.reverseVolts, limitVolts: led.reverseMaxVolts }), windingReference] : []),
  ];
  const lit = (corner: LedCorner): string => (isAc(values) ? `lit ${showQuantity(corner.litShare, '%', 2)} of the time, ${showQuantity(corner.peakAmps, 'A', 2)} at the peak` : `with LEDs that drop ${showQuantity(led.forwardVolts[corner === at.low ? 'max' : corner === at.high ? 'min' : 'typical'], 'V', 2)}`);
  const figure = (corner: LedCorner, words: string) =>
    ({ name: `${words} ${name} · ${showMarked(corner.supplyVolts, 'V')}${isAc(values) ? ' AC' : ''}`, value: corner.amps, unit: 'A', of: isAc(values) ? 'mean' : '', found: lit(corner) }) as const;
  const total = at.nominal.amps * values.strings;
  return {
    exactOhms,
    ohms,
    watts: at.high.watts,
    corners: [
      { ...figure(at.low, 'low'), level: levelOfRule(findings, 'led-lit') },
      figure(at.nominal, 'nominal'),
      { ...figure(at.high, 'high'), level: levelOfRule(findings, isAc(values) && !antiparallel ? 'led-reverse' : 'led-current') },
    ],
    findings,
    working: [
      resistorStep(values, led, exactOhms),
      workingStep({
        name: 'heat', words: `Most heat in it: highest ${name}, LEDs of least drop${antiparallel && isAc(values) ? ', both half-cycles' : ''}.`,
        formula: isAc(values) ? 'Mean of its squared volts over the cycle, over its ohms' : 'P = I × I × R',
        numbers: [{ symbol: 'I', value: at.high.amps, unit: 'A' }, { symbol: 'R', value: ohms, unit: 'Ω' }],
        result: { symbol: 'P', value: at.high.watts, unit: 'W' }, source: { id: isAc(values) ? 'solved' : 'arithmetic' },
      }),
    ],
    plot: plotOf(values, led, ohms),
    handOn: isAc(values)
      ? []
      : [handOn(loadList, { what: showQuantity(total, 'A'), given: { railVolts: Math.max(3, values.railVolts), airCelsius: values.airCelsius, loads: [{ kind: 'indicator', name: 'Lamp', count: values.strings, amps: Number(at.nominal.amps.toPrecision(3)) }] } })],
    words: `${showQuantity(at.nominal.amps, 'A')}${isAc(values) ? ' on average' : ''}, ${showQuantity(at.low.amps, 'A', 2)} to ${showQuantity(at.high.amps, 'A', 2)} by supply and drop${values.strings > 1 ? `, ${showQuantity(total, 'A')} in all` : ''}`,
  };
}
