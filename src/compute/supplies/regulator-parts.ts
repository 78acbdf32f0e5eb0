import { say } from '../findings/check.ts';
import { adjustableOutput, protectionDiodes } from '../parts/regulator-linear.ts';
import type { LinearRegulator } from '../parts/regulator-linear.ts';
import { buckClampVolts } from '../parts/regulator-switching.ts';
import { nearestPreferred, preferredValues } from '../quantity.ts';
import type { PartRole, SizedPart } from './supply-types.ts';

const small = (role: PartRole, name: string, count: number, why: string, numbers: SizedPart['numbers']): SizedPart => ({
  role,
  name,
  count,
  chosenBy: 'sized',
  why,
  numbers,
  basis: 'typical',
  cubicMetres: count * 0.1e-6,
});

/** The pair of 1 % resistors that sets an adjustable regulator nearest to its output and carries its least load. */
export interface SettingResistors {
  /** Output to adjust pin. */
  readonly r1Ohms: number;
  /** Adjust pin to ground. */
  readonly r2Ohms: number;
  readonly outputVolts: number;
}

/**
 * Picks both resistors of an adjustable regulator from the 1 % series: the upper one small enough to draw the least
 * load by itself, the lower one nearest to the output wanted, over the four largest upper ones that do.
 */
export function settingResistors(options: { readonly part: LinearRegulator; readonly outputVolts: number }): SettingResistors {
  const { part, outputVolts } = options;
  const most = part.outputVolts / part.minLoadAmps;
  const decade = 10 ** Math.floor(Math.log10(most));
  const uppers = [0.1, 1].flatMap((step) => preferredValues('E96').map((value) => Number((value * decade * step).toPrecision(3)))).filter((ohms) => ohms <= most).slice(-4);
  let best: SettingResistors | undefined;
  for (const r1Ohms of uppers) {
    const exact = Math.max(1e-3, r1Ohms * (outputVolts / part.outputVolts - 1));
    const r2Ohms = nearestPreferred({ value: exact, series: 'E96' });
    const reached = adjustableOutput({ part, r1Ohms, r2Ohms }).typical;
    if (best === undefined || Math.abs(reached - outputVolts) < Math.abs(best.outputVolts - outputVolts)) best = { r1Ohms, r2Ohms, outputVolts: reached };
  }
  if (best === undefined) throw new RangeError('no upper resistor carries the least load');
  return best;
}

/** The small parts that a linear regulator's sheet asks for: capacitors close to it, its two resistors, its diodes. */
export function linearCompanions(options: { readonly part: LinearRegulator; readonly outputVolts: number; readonly railFarads: number }): readonly SizedPart[] {
  const { part, outputVolts, railFarads } = options;
  const behind = Math.max(railFarads, part.outputFarads);
  const parts = [
    small('regulator-capacitor', `${say(part.inputFarads, 'F')} at the regulator’s input`, 1, 'What its sheet asks for close to its pins when the reservoir is more than a few centimetres away.', [
      { name: 'capacitance', value: part.inputFarads, unit: 'F' },
    ]),
    small(
      'regulator-capacitor',
      `${say(part.outputFarads, 'F')} at the regulator’s output`,
      1,
      part.outputCapacitorStabilises ? 'It oscillates without it: at least this much, with an ESR inside its sheet’s band.' : 'What its sheet asks for, against fast changes of the load.',
      [{ name: 'capacitance', value: part.outputFarads, unit: 'F' }],
    ),
  ];
  if (part.family === 'adjustable') {
    const { r1Ohms, r2Ohms, outputVolts: reached } = settingResistors({ part, outputVolts });
    parts.push(
      small('setting-resistor', `${say(r1Ohms, 'Ω')} and ${say(r2Ohms, 'Ω')}, 1 %`, 2, `They set ${say(reached, 'V')}; the first, output to adjust pin, carries the least load of ${say(part.minLoadAmps, 'A')} by itself.`, [
        { name: 'output to adjust', value: r1Ohms, unit: 'Ω' },
        { name: 'adjust to ground', value: r2Ohms, unit: 'Ω' },
      ]),
    );
  }
  for (const diode of protectionDiodes({ part, outputVolts, inputFarads: 1e-3, outputFarads: behind })) {
    parts.push(small('protection-diode', `1N4002, anode to ${diode.anode}, cathode to ${diode.cathode}`, 1, diode.why, []));
  }
  return parts;
}

/** What stands behind a step-down module: a filter for its residue, and a clamp for the day its switch fails shorted. */
export function buckCompanions(outputVolts: number): readonly SizedPart[] {
  const { min, max } = buckClampVolts(outputVolts);
  return [
    small('filter', '10 µH and 100 µF behind the module', 2, 'Its residue at the switching frequency, and its bursts at light load, stay out of the rail’s wiring.', [
      { name: 'inductance', value: 10e-6, unit: 'H' },
      { name: 'capacitance', value: 100e-6, unit: 'F' },
    ]),
    small('clamp', `Over-voltage clamp of ${say(min, 'V')} to ${say(max, 'V')}, with a fuse before the module`, 1, 'A switch that fails shorted puts the whole input on the load; the clamp holds it and blows the fuse.', [
      { name: 'lowest', value: min, unit: 'V' },
      { name: 'highest', value: max, unit: 'V' },
    ]),
  ];
}
