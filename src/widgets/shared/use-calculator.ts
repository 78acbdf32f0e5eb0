import { useCallback, useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { caseIn, readCase, withCase, writeCase } from './address.ts';
import { solverOf, type Solver } from './calculator-worker.ts';
import type { AnyField, Calculator, FieldSet, RowsField, SimpleField, ViewModel } from './definition.ts';
import { evaluate, type Answer, type Evaluation, type OpenedCase } from './evaluate.ts';
import type { WorkerLike } from './long-work.ts';
import { parseFields } from './parse-fields.ts';
import { rawRow, type RawFields, type RawRow } from './raw-fields.ts';

/** Everything one field needs to show and change itself. */
export interface FieldHandle<D extends SimpleField = SimpleField> {
  readonly id: string;
  readonly descriptor: D;
  readonly raw: string;
  readonly error: string | undefined;
  /** The value that the results stand on: SI, or words. */
  readonly value: string | number | undefined;
  readonly change: (raw: string) => void;
  /** Mark that follows it in its sentence, kept on its line: `<Field {...field('loadAmps')} then="," />`. */
  readonly then?: string;
}

/** A list of rows, with a handle for each cell. */
export interface RowsHandle {
  readonly id: string;
  readonly descriptor: RowsField;
  readonly rows: readonly RawRow[];
  readonly error: string | undefined;
  readonly cell: (index: number, name: string) => FieldHandle;
  readonly add: (given?: Readonly<Record<string, string | number>>) => void;
  readonly duplicate: (index: number) => void;
  readonly remove: (index: number) => void;
}

/** A calculator at work, as its view sees it. */
export interface CalculatorState<F extends FieldSet, R> extends Evaluation<F, R> {
  /** Prefix of the ids of everything in it; differs between two of the same calculator on one page. */
  readonly instance: string;
  /** False in the page as built and until it has come alive. */
  readonly alive: boolean;
  readonly field: <N extends Extract<keyof F, string>>(name: N) => FieldHandle<Extract<F[N], SimpleField>>;
  readonly rows: (name: Extract<keyof F, string>) => RowsHandle;
  /** True when the fields stand as the page opened them. */
  readonly asOpened: boolean;
  readonly reset: () => void;
  /** Writes several fields at once, as typed. */
  readonly fill: (raw: Readonly<Record<string, string>>) => void;
  /** Fetches the solver ahead of the first change. */
  readonly prepare: () => void;
  /** The worker is at it: `view` is what was known before, or the calculator's `quick` answer. */
  readonly pending: boolean;
  /** Ends the worker's work. */
  readonly stop: () => void;
  /** Where the reader is told that an address could not be read. */
  readonly notice: string | undefined;
}

/** The props of a calculator's view. */
export interface ViewProps<C> {
  readonly state: C extends Calculator<infer F, infer R> ? CalculatorState<F, R> : never;
  /** Titles of sources by id, from the page. */
  readonly sources: Readonly<Record<string, string>>;
}

const WRITE_AFTER_MS = 300;

const UNREAD = 'The address of this page holds a case of another version, which cannot be read. The worked case stands instead.';
const STOPPED = 'The work was stopped before it was done. Change a value to begin again.';
const UNFETCHED = 'The script that solves this could not be fetched. Once you are connected, change a value again.';

const replaceRow = (rows: readonly RawRow[], index: number, name: string, text: string): readonly RawRow[] =>
  rows.map((row, at) => (at === index ? { ...row, [name]: text } : row));

/**
 * Holds a calculator's fields, solves them as they change, and keeps them in the page's address.
 *
 * It starts from a case that was solved when the page was built. The solver itself is fetched with the first change, or
 * a little ahead of it (`prepare`). With `createWorker` it is solved in that worker, so that the page never stands still.
 */
export function useCalculator<F extends FieldSet, R extends ViewModel>(
  opened: OpenedCase<F, R>,
  load: () => Promise<Calculator<F, R>>,
  instance: string,
  createWorker?: () => WorkerLike,
): CalculatorState<F, R> {
  const [now, show] = useState<Evaluation<F, R>>({ ...opened, errors: {}, stale: false });
  const latest = useRef(now);
  const calculator = useRef<Calculator<F, R>>();
  const loading = useRef<Promise<void>>();
  const [alive, setAlive] = useState(false);
  const [notice, setNotice] = useState<string>();
  const [broken, setBroken] = useState<{ readonly error: unknown }>();
  const [pending, setPending] = useState(false);
  const solver = useRef<Solver>();
  const awaited = useRef(false);
  const touched = useRef(false);
  // A fault of the solver's is thrown while rendering, where the error boundary can catch it.
  if (broken !== undefined) throw broken.error;

  const put = useCallback((next: Evaluation<F, R>) => {
    latest.current = next;
    show(next);
  }, []);

  const solveNow = useCallback((raw: RawFields) => {
    if (calculator.current === undefined) return;
    try {
      put(evaluate(calculator.current, raw, latest.current));
    } catch (error) {
      setBroken({ error });
    }
  }, []);

  const prepare = useCallback((): Promise<void> => {
    loading.current ??= load().then(
      (loaded) => {
        calculator.current = loaded;
      },
      () => {
        loading.current = undefined;
      },
    );
    return loading.current;
  }, []);

  const wait = useCallback((on: boolean) => {
    awaited.current = on;
    setPending(on);
  }, []);

  const take = useCallback((answer: Answer<F, R>, isLast: boolean) => {
    if (!awaited.current) return;
    const { raw, values, view } = latest.current;
    // While a value is dragged, answers to where it was a moment ago are shown on the way.
    put('view' in answer ? { raw, errors: {}, ...answer, stale: false } : { raw, values, view, ...answer, stale: true });
    if (isLast) wait(false);
  }, []);

  const solveOnPage = useCallback((): void => {
    if (!awaited.current) return;
    void prepare().then(() => {
      wait(false);
      if (calculator.current === undefined) put({ ...latest.current, stale: true, problem: UNFETCHED });
      else solveNow(latest.current.raw);
    });
  }, []);

  const solverThere = useCallback((): Solver | undefined => {
    if (createWorker === undefined) return undefined;
    // A worker that a browser or a policy forbids is no reason to leave the reader without an answer: then the page solves.
    // A fault of the solver's shows itself again there.
    solver.current ??= solverOf<F, R>({ create: createWorker, onAnswer: take, onFailure: solveOnPage });
    return solver.current;
  }, []);

  const stop = useCallback(() => {
    solver.current?.stop();
    wait(false);
    put({ ...latest.current, stale: true, problem: STOPPED });
  }, []);
  useEffect(() => () => solver.current?.stop(), []);

  const updateByWorker = useCallback((by: Solver, raw: RawFields) => {
    const { values, view } = latest.current;
    const { errors, values: read } = parseFields(opened.fields, raw);
    put({ raw, errors, values, view, stale: read === undefined });
    wait(read !== undefined);
    if (read !== undefined) by.ask(raw);
  }, []);

  const update = useCallback((next: (raw: RawFields) => RawFields) => {
    const raw = next(latest.current.raw);
    const by = solverThere();
    if (by !== undefined) {
      updateByWorker(by, raw);
      return;
    }
    if (calculator.current !== undefined) {
      solveNow(raw);
      return;
    }
    put({ ...latest.current, raw, stale: true });
    void prepare().then(() => {
      if (calculator.current === undefined) put({ ...latest.current, problem: UNFETCHED });
      else solveNow(latest.current.raw);
    });
  }, []);

  const change = useCallback((next: (raw: RawFields) => RawFields) => {
    touched.current = true;
    update(next);
  }, []);

  // After hydration and not before: it must meet the page as built, which shows the worked case.
  useLayoutEffect(() => {
    setAlive(true);
    const text = caseIn(location.search, instance);
    if (text === undefined) return;
    const raw = readCase(opened, text, opened.raw);
    if (raw === undefined) setNotice(UNREAD);
    else update(() => raw);
  }, []);

  const written = writeCase(opened, now.raw, opened.raw);
  useEffect(() => {
    if (!touched.current) return;
    const write = (): void => {
      history.replaceState(history.state, '', `${location.pathname}${withCase(location.search, instance, written)}${location.hash}`);
    };
    const timer = setTimeout(write, WRITE_AFTER_MS);
    // A reload or a step away within the pause must not lose the last keystrokes.
    addEventListener('pagehide', write);
    return () => {
      clearTimeout(timer);
      removeEventListener('pagehide', write);
    };
  }, [written]);

  const descriptorOf = (name: string): AnyField => {
    const descriptor = opened.fields[name];
    if (descriptor === undefined) throw new Error(`There is no field "${name}"`);
    return descriptor;
  };

  const field = <N extends Extract<keyof F, string>>(name: N): FieldHandle<Extract<F[N], SimpleField>> => {
    const raw = now.raw[name];
    return {
      id: `${instance}-${name}`,
      descriptor: descriptorOf(name) as Extract<F[N], SimpleField>,
      raw: typeof raw === 'string' ? raw : '',
      error: now.errors[name],
      value: now.values[name] as string | number | undefined,
      change: (text) => change((last) => ({ ...last, [name]: text })),
    };
  };

  const rows = (name: Extract<keyof F, string>): RowsHandle => {
    const descriptor = descriptorOf(name) as RowsField;
    const list = (raw: RawFields): readonly RawRow[] => (Array.isArray(raw[name]) ? raw[name] : []);
    const current = list(now.raw);
    const values = now.values[name] as readonly Readonly<Record<string, string | number | undefined>>[];
    const edit = (next: (all: readonly RawRow[]) => readonly RawRow[]): void => change((last) => ({ ...last, [name]: next(list(last)) }));
    return {
      id: `${instance}-${name}`,
      descriptor,
      rows: current,
      error: now.errors[name],
      cell: (index, cell) => ({
        id: `${instance}-${name}-${index}-${cell}`,
        descriptor: descriptor.row[cell] as SimpleField,
        raw: current[index]?.[cell] ?? '',
        error: now.errors[`${name}.${index}.${cell}`],
        value: values[index]?.[cell],
        change: (text) => edit((all) => replaceRow(all, index, cell, text)),
      }),
      add: (given) => edit((all) => [...all, rawRow(descriptor, given)]),
      duplicate: (index) => edit((all) => all.flatMap((row, at) => (at === index ? [row, row] : [row]))),
      remove: (index) => edit((all) => all.filter((_, at) => at !== index)),
    };
  };

  return {
    ...now,
    instance,
    alive,
    field,
    rows,
    asOpened: written === undefined,
    reset: () => change(() => opened.raw),
    fill: (written) => change((last) => ({ ...last, ...written })),
    prepare: () => {
      if (createWorker === undefined) void prepare();
      else solverThere()?.prepare();
    },
    pending,
    stop,
    notice,
  };
}
