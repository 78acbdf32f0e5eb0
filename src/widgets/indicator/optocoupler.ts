import { levelOfLoad } from '../../compute/findings/check.ts';
import type { Finding } from '../../compute/findings.ts';
import { checkLedLit, checkOptocouplerDrive, checkOptocouplerSink } from '../../compute/findings/indicator.ts';
import { ledCorners } from '../../compute/parts/led-corners.ts';
import { driveOptocoupler, optocoupler, OPTOCOUPLER_AGEING, pullUpAmps, reliableSinkAmps, SATURATED_VOLTS } from '../../compute/parts/optocoupler.ts';
import { workingStep } from '../../compute/supplies/working.ts';
import { loadList } from '../load-list/state.ts';
import { levelOfRule } from '../shared/chain-view.ts';
import { handOn } from '../shared/hand-links.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import type { Values } from './fields.ts';
import { resistorOf, type Outcome } from './outcome.ts';

/** The LED side of an optocoupler, and whether its output can be relied on. */
export function optocouplerOutcome(values: Values): Outcome {
  const part = optocoupler(values.part);
  const drive = driveOptocoupler({ part, driveVolts: values.railVolts, ledAmps: values.ledAmps, pullUpVolts: values.pullUpVolts });
  const ohms = resistorOf(values, drive.ohms, 'nearest');
  const { typical, max } = part.ledVolts;
  // As far below the usual drop as the most is above it: the sheets print no least.
  const at = ledCorners({ feed: 'dc', volts: values.railVolts, spread: values.railSpread, forwardVolts: { min: Math.max(0.5, 2 * typical - max), typical, max }, ohms });
  const sure = (amps: number): number => reliableSinkAmps({ part, ledAmps: amps });
  const loadAmps = pullUpAmps({ volts: values.pullUpVolts, ohms: values.pullUpOhms });
  const low = { corner: 'the lowest rail, an old coupler of least transfer ratio', restsOn: [part.basis, 'assumed'] as const };
  const collector: Finding = {
    rule: 'optocoupler-volts', level: levelOfLoad({ value: values.pullUpVolts, limit: part.collectorMaxVolts, aim: 0.8 }),
    what: `Its output holds off ${showQuantity(values.pullUpVolts, 'V')} when dark and bears ${showMarked(part.collectorMaxVolts, 'V')}.`,
    numbers: [{ name: 'off', value: values.pullUpVolts, unit: 'V' }, { name: 'rated', value: part.collectorMaxVolts, unit: 'V' }],
    why: 'A coil on the output adds its kick to that, unless a diode takes it up.', todo: 'Put a diode across any coil on the output, and keep to four fifths of the rating.',
    restsOn: [part.basis], source: part.source,
  };
  const findings = [
    checkOptocouplerSink({ ...low, loadAmps, collectorAmps: sure(at.low.amps), source: part.source }),
    checkOptocouplerDrive({ ...low, leastAmps: at.low.amps, testAmps: part.testAmps, source: part.source }),
    checkLedLit({ ...low, leastAmps: at.low.amps, usualAmps: at.nominal.amps, source: part.source }),
    collector,
  ];
  const range = Array.from({ length: 31 }, (_, index) => (values.ledAmps * index) / 15);
  return {
    exactOhms: drive.ohms,
    ohms,
    watts: at.high.watts,
    corners: [
      { name: `low rail · ${showMarked(at.low.supplyVolts, 'V')}`, value: sure(at.low.amps), unit: 'A', of: 'sure to sink', level: levelOfRule(findings, 'optocoupler-sink'), found: `it must sink ${showQuantity(loadAmps, 'A')}`, restsOn: 'half the least ratio, for age' },
      { name: `nominal rail · ${showMarked(at.nominal.supplyVolts, 'V')}`, value: at.nominal.amps, unit: 'A', of: 'LED', level: levelOfRule(findings, 'optocoupler-drive'), found: `its ratio is stated at ${showMarked(part.testAmps, 'A')}` },
      { name: `high rail · ${showMarked(at.high.supplyVolts, 'V')}`, value: at.high.amps, unit: 'A', of: 'LED', found: 'with the least drop' },
    ],
    findings,
    working: [
      workingStep({
        name: 'resistor', words: 'What its LED leaves of the rail, over the current wanted.', formula: 'R = (V − Vf) / I',
        numbers: [{ symbol: 'V', value: values.railVolts, unit: 'V' }, { symbol: 'Vf', value: typical, unit: 'V' }, { symbol: 'I', value: values.ledAmps, unit: 'A' }],
        result: { symbol: 'R', value: drive.ohms, unit: 'Ω' }, source: part.source,
      }),
      workingStep({
        name: 'sure-to-sink', words: 'What its output is sure of for years: least LED current, least ratio when new, half of it left.', formula: 'Ic = Il × k × a',
        numbers: [{ symbol: 'Il', value: at.low.amps, unit: 'A' }, { symbol: 'k', value: part.transfer.min, unit: '%' }, { symbol: 'a', value: OPTOCOUPLER_AGEING, unit: '' }],
        result: { symbol: 'Ic', value: sure(at.low.amps), unit: 'A' }, source: part.source,
      }),
      workingStep({
        name: 'must-sink', words: 'What it has to sink to pull its load down.', formula: 'Ip = (Vp − Vs) / Rp',
        numbers: [{ symbol: 'Vp', value: values.pullUpVolts, unit: 'V' }, { symbol: 'Vs', value: SATURATED_VOLTS, unit: 'V' }, { symbol: 'Rp', value: values.pullUpOhms, unit: 'Ω' }],
        result: { symbol: 'Ip', value: loadAmps, unit: 'A' }, source: { id: 'arithmetic' },
      }),
    ],
    plot: {
      caption: 'What the output is sure of, old and of least ratio, as its LED gets more current; against what it must sink.',
      x: { name: 'LED current', unit: 'A', values: range },
      series: [
        { name: 'sure to sink', kind: 'amps', unit: 'A', values: range.map(sure) },
        { name: 'must sink', kind: 'other', unit: 'A', values: range.map(() => loadAmps) },
      ],
      markAt: Math.min(at.nominal.amps, range.at(-1) ?? 0),
    },
    handOn: [handOn(loadList, { what: showQuantity(at.nominal.amps, 'A'), given: { railVolts: Math.max(3, values.railVolts), loads: [{ kind: 'optocoupler', name: 'Coupler', count: 1, amps: Number(at.nominal.amps.toPrecision(3)) }] } })],
    words: `${showQuantity(at.nominal.amps, 'A')} in its LED; when old it is sure to sink ${showQuantity(sure(at.low.amps), 'A')} of the ${showQuantity(loadAmps, 'A')} asked of it`,
  };
}
