import type { FunctionComponent, VNode } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Calculator, FieldSet, ViewModel } from './definition.ts';
import { ErrorBoundary } from './error-boundary.tsx';
import type { OpenedCase } from './evaluate.ts';
import type { WorkerLike } from './long-work.ts';
import { useCalculator, type ViewProps } from './use-calculator.ts';

/** What a page passes to a calculator's island; components/Calculator.astro fills it in. */
export interface IslandProps {
  /** An `OpenedCase` as JSON: one string is far smaller in the page than the tree it stands for. */
  readonly opened: string;
  /** Titles of the sources by id. */
  readonly sources?: Readonly<Record<string, string>>;
  /** Told apart from another of the same calculator on the page; also its key in the address. */
  readonly instance?: string;
  /** Level of the question as a heading. */
  readonly heading?: 1 | 2 | 3;
}

/** Folded working belongs on paper; what the reader had folded is folded again afterwards. */
function useUnfoldedInPrint(): { readonly current: HTMLElement | null } {
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    let opened: HTMLDetailsElement[] = [];
    const unfold = (): void => {
      opened = [...(box.current?.querySelectorAll<HTMLDetailsElement>('details.working:not([open])') ?? [])];
      for (const each of opened) each.open = true;
    };
    const fold = (): void => {
      for (const each of opened) each.open = false;
    };
    addEventListener('beforeprint', unfold);
    addEventListener('afterprint', fold);
    return () => {
      removeEventListener('beforeprint', unfold);
      removeEventListener('afterprint', fold);
    };
  }, []);
  return box;
}

/** Makes the component that a page shows: the view in its frame, alive with the calculator's state, solved in a worker where one is given. */
export function island<F extends FieldSet, R extends ViewModel>(
  load: () => Promise<Calculator<F, R>>,
  View: FunctionComponent<ViewProps<Calculator<F, R>>>,
  createWorker?: () => WorkerLike,
): FunctionComponent<IslandProps> {
  function Body({ opened, sources, instance }: { readonly opened: OpenedCase<F, R>; readonly sources: IslandProps['sources']; readonly instance: string }): VNode {
    const state = useCalculator(opened, load, instance, createWorker);
    const props = { state, sources: sources ?? {} } as unknown as ViewProps<Calculator<F, R>>;
    return (
      <>
        {state.notice !== undefined && (
          <p class="problem" role="status">
            {state.notice}
          </p>
        )}
        <View {...props} />
        {state.alive && (
          <p class="calculator-foot">
            <button class="button quiet" type="button" disabled={state.asOpened} onClick={state.reset}>
              Back to the worked case
            </button>
            <button class="button quiet" type="button" onClick={() => print()}>
              Print
            </button>
            <span class="rests-on">The address of this page holds the case: keep or send it to come back to these figures.</span>
          </p>
        )}
        <noscript>
          <p class="rests-on">Without JavaScript this shows the worked case, solved when the page was built.</p>
        </noscript>
      </>
    );
  }

  return function Island({ opened: text, sources, instance, heading = 2 }: IslandProps): VNode {
    const opened = useMemo(() => JSON.parse(text) as OpenedCase<F, R>, [text]);
    const name = instance ?? opened.id;
    const box = useUnfoldedInPrint();
    const Heading = `h${heading}` as 'h2';
    return (
      <section class="calculator rails" aria-labelledby={`${name}-question`} ref={box}>
        <Heading class="question" id={`${name}-question`}>
          {opened.question}
        </Heading>
        <ErrorBoundary name={opened.question}>
          <Body opened={opened} sources={sources} instance={name} />
        </ErrorBoundary>
      </section>
    );
  };
}
