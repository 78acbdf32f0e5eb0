/*
 * How a calculator is made
 * ------------------------
 * 1. `src/widgets/<name>/state.ts`, pure and free of the DOM: the fields, and `solve` from their SI values to
 *    everything the view shows.
 *
 *        export const fields = {
 *          windingVolts: { kind: 'quantity', label: 'Winding, rated volts', unit: 'V', default: 15, min: 1, max: 100 },
 *          topology: { kind: 'choice', label: 'Rectifier', options: [{ value: 'bridge', label: 'bridge' }], default: 'bridge' },
 *        } as const satisfies FieldSet;
 *
 *        export const rectify = defineCalculator({
 *          id: 'rectify', version: 1, question: 'What comes out of it?', fields,
 *          quantities: { 'winding.openCircuitVolts': 'windingVolts' },   // InputError.quantity → the field to show it at
 *          solve: (values) => ({ level, summary, ... }),                  // may throw InputError or SolveError
 *        });
 *
 *    `values` is typed from the fields. `level` and `summary` (one spoken sentence) are the only members every view
 *    model must have: the frame shows and announces them. Everything in it is plain data: it is written into the page.
 *
 * 2. `src/widgets/<name>/View.tsx`: the sentence with its fields, then the results, out of the parts in this folder.
 *    It imports the state's types only: the page as built holds the solved worked case, and the state's script (solver,
 *    catalogue, findings) is fetched when the reader goes to change something. Everything a view shows is therefore in
 *    the view model, links to other calculators (`handOn`) included.
 *
 *        import type { rectify } from './state.ts';
 *
 *        function RectifyView({ state, sources }: ViewProps<typeof rectify>) {
 *          const { field, view, values, instance, stale } = state;
 *          return <>
 *            <Sentence state={state} drag="loadAmps"><p>A winding rated <Field {...field('windingVolts')} /> feeds a <Field {...field('topology')} then="." /></p></Sentence>
 *            <Results state={state}> <Corners …/> <Findings …/> <Plot …/> <Working …/> <HandOn …/> </Results>
 *          </>;
 *        }
 *        export default island(() => import('./state.ts').then((module) => module.rectify), RectifyView);
 *
 *    A solver that takes more than a frame runs in a worker, `src/widgets/<name>/<name>.worker.ts`:
 *
 *        answerCalculator(self, rectify);                              // from shared/calculator-worker.ts
 *
 *    and `island` is given `() => new Worker(new URL('./rectify.worker.ts', import.meta.url), { type: 'module' })` as well.
 *    Without workers it is solved on the page.
 *
 * 3. One line in `src/widgets/registry.ts` and one in `src/components/Calculator.astro` (its island). Title and question
 *    stand in `content/calculators.json`; a test holds the question the same.
 *
 * Tests: `tests/widgets/<name>/state.test.ts` for its own cases; tests/widgets/every-calculator.test.ts and
 * tests/browser/calculators.test.ts try every calculator of the registry without being told (hostile fields and
 * addresses, keyboard, reload, no JavaScript, print, bytes).
 *
 * The frame does the rest: parsing, messages beside the field, the last good result when a field is bad, the address,
 * the verdict and its announcement, the error boundary, rendering at build. A lesson or page passes
 * `initial={{ windingVolts: 15 }}` (SI numbers, or text as it would be typed) to open it on another case, and
 * `sources={{ id: 'Title' }}` for the titles of the sources that findings and steps name.
 */
import type { Level } from '../../compute/findings.ts';
import type { Unit } from './units.ts';

/** How far one press of an arrow key goes: along preferred values, along 1-2-5, or by a fixed amount in SI units. */
export type Stepping = 'e12' | 'e6' | '1-2-5' | number;

/** A number with a unit, written as technicians write it; held in SI. */
export interface QuantityField {
  readonly kind: 'quantity';
  /** Spoken name of the field, and the start of its message: "Winding, rated volts". */
  readonly label: string;
  readonly unit: Unit;
  /** Smallest and largest value accepted, SI, inclusive. */
  readonly min: number;
  readonly max: number;
  /** The worked case, SI. Absent only for an optional field. */
  readonly default?: number;
  /** A blank is an answer: "nobody has read it". The value is then undefined. */
  readonly optional?: true;
  /** What a blank says; "not known" when left out. */
  readonly blank?: string;
  /** Prefix meant by a bare number: `µ` makes `470` in a farad field 470 µF. */
  readonly assume?: string;
  readonly stepping?: Stepping;
  /** A count: only whole numbers are taken. */
  readonly whole?: true;
  /** One line more about what is asked, read out with the label. */
  readonly hint?: string;
}

/** One of a few named alternatives. */
export interface ChoiceField {
  readonly kind: 'choice';
  readonly label: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly default: string;
  readonly hint?: string;
}

/** A name the reader gives to something. */
export interface TextField {
  readonly kind: 'text';
  readonly label: string;
  readonly default: string;
  readonly maxLength: number;
}

export type SimpleField = QuantityField | ChoiceField | TextField;

/** A list of like things, one sentence each. */
export interface RowsField {
  readonly kind: 'rows';
  readonly label: string;
  /** What one row is called: "load". */
  readonly noun: string;
  readonly row: Readonly<Record<string, SimpleField>>;
  /** The worked case: SI numbers and words. */
  readonly default: readonly Readonly<Record<string, string | number>>[];
  readonly min: number;
  readonly max: number;
}

export type AnyField = SimpleField | RowsField;
export type FieldSet = Readonly<Record<string, AnyField>>;

type ValueOf<F> = F extends { readonly kind: 'quantity'; readonly optional: true }
  ? number | undefined
  : F extends { readonly kind: 'quantity' }
    ? number
    : F extends { readonly kind: 'choice'; readonly options: readonly { readonly value: infer V }[] }
      ? V
      : F extends { readonly kind: 'text' }
        ? string
        : F extends { readonly kind: 'rows'; readonly row: infer R }
          ? readonly { readonly [K in keyof R]: ValueOf<R[K]> }[]
          : never;

/** The SI values that a set of fields stands for. */
export type ValuesOf<F> = { readonly [K in keyof F]: ValueOf<F[K]> };

/** What every calculator's result says first. */
export interface ViewModel {
  readonly level: Level;
  /** The answer in one sentence, figures included; shown beside the mark and read out after a change. */
  readonly summary: string;
}

/** What of a calculator the page as built must know: all but its solver. */
export interface Face<F extends FieldSet = FieldSet> {
  /** Kebab-case; also its folder, its page and its key in the address. */
  readonly id: string;
  /** Of the address it writes. Raise it when a field changes its meaning: addresses of another version are not read. */
  readonly version: number;
  readonly question: string;
  readonly fields: F;
}

export interface Calculator<F extends FieldSet = FieldSet, R extends ViewModel = ViewModel> extends Face<F> {
  /** Which field an `InputError` belongs to, by the quantity it names. A name equal to a field needs no entry. */
  readonly quantities?: Readonly<Record<string, Extract<keyof F, string>>>;
  readonly solve: (values: ValuesOf<F>) => R;
  /**
   * What can be said soonest, for a calculator that is solved in a worker: shown at once and replaced by what `solve`
   * gives. What it has not looked at it calls `not assessed`.
   */
  readonly quick?: (values: ValuesOf<F>) => R;
}

/** Gives the calculator back with its types worked out from its fields. */
export function defineCalculator<const F extends FieldSet, R extends ViewModel, const I extends string>(
  calculator: Calculator<F, R> & { readonly id: I },
): Calculator<F, R> & { readonly id: I } {
  return calculator;
}

/** A case to open a calculator on: SI numbers, or text as it would be typed. Fields left out keep the worked case. */
export type InitialCase = Readonly<
  Record<string, string | number | readonly Readonly<Record<string, string | number>>[] | undefined>
>;
