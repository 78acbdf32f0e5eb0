import { expect, it } from 'vitest';
import type { AnyField, Calculator, FieldSet, ViewModel } from '../../src/widgets/shared/definition.ts';
import { evaluate, open } from '../../src/widgets/shared/evaluate.ts';
import type { RawFields } from '../../src/widgets/shared/raw-fields.ts';

const HOSTILE = ['', '0', '-1', '1e12', '1e-12', 'plenty', '12 furlongs', 'NaN', 'Infinity', '<img src=x>'];

/** Values that a calculator must take to the ends of each range: its limits, as text. */
const ends = (field: AnyField): readonly string[] => (field.kind === 'quantity' ? [String(field.min), String(field.max)] : field.kind === 'choice' ? field.options.map(({ value }) => value) : []);

const isSound = (value: unknown): boolean =>
  typeof value === 'number' ? Number.isFinite(value)
  : Array.isArray(value) ? value.every(isSound)
  : typeof value === 'object' && value !== null ? Object.values(value).every(isSound)
  : typeof value === 'string' ? !/NaN|undefined|Infinity|\[object/.test(value)
  : true;

/** Feeds every field what nobody should write, and both ends of its range; nothing may throw, and no figure be unsound. */
export function takesAnything<F extends FieldSet, R extends ViewModel>(calculator: Calculator<F, R>, cases: readonly RawFields[] = [{}]): void {
  const opened = open(calculator);
  const names = Object.keys(calculator.fields).filter((name) => calculator.fields[name]?.kind !== 'rows');
  it.each(names)('takes anything in %s', (name) => {
    const field = calculator.fields[name] as AnyField;
    for (const over of cases) {
      for (const text of [...HOSTILE, ...ends(field)]) {
        const after = evaluate(calculator, { ...opened.raw, ...over, [name]: text }, opened);
        if (after.stale) expect(Object.keys(after.errors).length + Number(after.problem !== undefined), `${name} = "${text}"`).toBeGreaterThan(0);
        else expect(isSound(JSON.parse(JSON.stringify(after.view))), `${name} = "${text}": ${JSON.stringify(after.view).match(/.{80}(null|NaN|undefined).{40}/)?.[0] ?? ''}`).toBe(true);
      }
      if (field.kind === 'quantity') {
        for (const text of ['plenty', '1e12', '-1e12']) {
          const after = evaluate(calculator, { ...opened.raw, ...over, [name]: text }, opened);
          expect(after.errors[name], `${name} = "${text}"`).toMatch(/between|not a number/);
          expect(after.view).toBe(opened.view);
        }
      }
    }
  });
}
