import { InputError, SolveError } from '../../compute/errors.ts';
import type { Calculator, Face, FieldSet, InitialCase, ValuesOf, ViewModel } from './definition.ts';
import { parseFields, type FieldErrors } from './parse-fields.ts';
import { rawFields, type RawFields } from './raw-fields.ts';
import { describeAllowed, type Unit } from './units.ts';

/** What is known of a calculator at one moment. */
export interface Evaluation<F extends FieldSet, R> {
  readonly raw: RawFields;
  readonly errors: FieldErrors;
  /** What is wrong with the case as a whole, when it cannot be put down to one field. */
  readonly problem?: string;
  /** The last case that could be solved, and its result. */
  readonly values: ValuesOf<F>;
  readonly view: R;
  /** True when `view` answers an earlier state of the fields than `raw`. */
  readonly stale: boolean;
}

/** The field that a refused quantity is shown at: as mapped, or a path that starts with a field's own name. */
function pathOf(calculator: { readonly fields: FieldSet; readonly quantities?: Readonly<Record<string, string>> }, quantity: string): string | undefined {
  const named = calculator.quantities?.[quantity];
  if (named !== undefined) return named;
  return Object.hasOwn(calculator.fields, quantity.split('.')[0] ?? '') ? quantity : undefined;
}

/** Unit of the field at a path, a cell of a row included. */
function unitAt(fields: FieldSet, path: string): Unit {
  const [name = '', , cell = ''] = path.split('.');
  const field = fields[name];
  const descriptor = field?.kind === 'rows' ? field.row[cell] : field;
  return descriptor?.kind === 'quantity' ? descriptor.unit : '';
}

const failed = <F extends FieldSet, R extends ViewModel>(
  calculator: Calculator<F, R>,
  error: unknown,
): { readonly errors: FieldErrors; readonly problem?: string } => {
  if (error instanceof InputError) {
    const path = pathOf(calculator, error.quantity);
    const allowed = describeAllowed(error.allowed, path === undefined ? '' : unitAt(calculator.fields, path));
    return path === undefined
      ? { errors: {}, problem: `${error.quantity}: write ${allowed}.` }
      : { errors: { [path]: `This cannot be solved with the rest of the case. Write ${allowed}.` } };
  }
  if (error instanceof SolveError) return { errors: {}, problem: `This case has no steady answer: ${error.message}` };
  throw error;
};

/** Solves the fields as they stand; what cannot be read or solved is said, and the last good result stays. */
export function evaluate<F extends FieldSet, R extends ViewModel>(
  calculator: Calculator<F, R>,
  raw: RawFields,
  last: { readonly values: ValuesOf<F>; readonly view: R },
): Evaluation<F, R> {
  const parsed = parseFields(calculator.fields, raw);
  const kept = { raw, values: last.values, view: last.view, stale: true };
  if (parsed.values === undefined) return { ...kept, errors: parsed.errors };
  try {
    return { raw, errors: {}, values: parsed.values, view: calculator.solve(parsed.values), stale: false };
  } catch (error) {
    return { ...kept, ...failed(calculator, error) };
  }
}

/** What a worker says of the fields: a result, or what is wrong with them. */
export type Answer<F extends FieldSet, R> =
  | { readonly values: ValuesOf<F>; readonly view: R }
  | { readonly errors: FieldErrors; readonly problem?: string };

/** Solves the fields away from the page, where no last result is at hand. */
export function answerFields<F extends FieldSet, R extends ViewModel>(calculator: Calculator<F, R>, raw: RawFields): Answer<F, R> {
  const parsed = parseFields(calculator.fields, raw);
  if (parsed.values === undefined) return { errors: parsed.errors };
  try {
    return { values: parsed.values, view: calculator.solve(parsed.values) };
  } catch (error) {
    return failed(calculator, error);
  }
}

/** A calculator opened on a case and solved: everything a page needs to show it, as plain data. */
export interface OpenedCase<F extends FieldSet = FieldSet, R = ViewModel> extends Face<F> {
  readonly raw: RawFields;
  readonly values: ValuesOf<F>;
  readonly view: R;
}

/** Opens a calculator on a case. A case that cannot be read or solved throws: an author wrote it. */
export function open<F extends FieldSet, R extends ViewModel>(calculator: Calculator<F, R>, initial?: InitialCase): OpenedCase<F, R> {
  const { id, version, question, fields } = calculator;
  const raw = rawFields(fields, initial);
  const parsed = parseFields(fields, raw);
  if (parsed.values === undefined) {
    throw new Error(`${id} cannot open on this case: ${Object.entries(parsed.errors).map(([path, message]) => `${path}: ${message}`).join(' ')}`);
  }
  return { id, version, question, fields, raw, values: parsed.values, view: calculator.solve(parsed.values) };
}
