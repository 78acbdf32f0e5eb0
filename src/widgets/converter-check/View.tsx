import type { VNode } from 'preact';
import { Corners } from '../shared/corners.tsx';
import { Field } from '../shared/field.tsx';
import { Findings } from '../shared/findings-list.tsx';
import { HandOn } from '../shared/hand-on.tsx';
import { island } from '../shared/island.tsx';
import { Plot } from '../shared/plot.tsx';
import { Results } from '../shared/results.tsx';
import { Sentence } from '../shared/sentence.tsx';
import type { ViewProps } from '../shared/use-calculator.ts';
import { Verdict } from '../shared/verdict-mark.tsx';
import { Working } from '../shared/working.tsx';
import type { ConverterCheckView, StartCard, converterCheck } from './state.ts';

type State = ViewProps<typeof converterCheck>['state'];

/** The module, and what is to be read on its sheet. */
function ModuleSentence({ field, view }: Pick<State, 'field'> & { readonly view: ConverterCheckView }): VNode {
  return (
    <p>
      A <Field {...field('module')} />
      {view.shows.module && (
        <>
          {' '}
          whose limit is at <Field {...field('overload')} /> of its rating and beyond it <Field {...field('startUp')} />, leaking <Field {...field('leakageAmps')} then="," /> starting into at most{' '}
          <Field {...field('maxLoadFarads')} /> and wanting at least <Field {...field('minLoadAmps')} then="," /> with <Field {...field('insulation')} /> printed on it,
        </>
      )}{' '}
      feeds a rail through <Field {...field('regulator')} />
      {view.shows.railVolts && (
        <>
          {' '}
          of <Field {...field('setVolts')} />
        </>
      )}
      .
    </p>
  );
}

function Start({ card }: { readonly card: StartCard }): VNode {
  return (
    <section class="option" {...(card.taken ? { 'data-best': '' } : {})}>
      <h3>{card.name}</h3>
      <p class="value">{card.outcome}</p>
      <p>{card.detail}</p>
      <Verdict level={card.level} />
    </section>
  );
}

function ConverterCheckCalculator({ state, sources }: ViewProps<typeof converterCheck>): VNode {
  const { field, view, instance, stale } = state;
  return (
    <>
      <Sentence state={state} drag="heaterAmps">
        <ModuleSentence field={field} view={view} />
        <p>
          The rail feeds heaters of <Field {...field('heaterAmps')} />
          {view.shows.heaters && (
            <>
              {' '}
              at <Field {...field('heaterVolts')} /> that take <Field {...field('coldRatio')} /> times that cold
            </>
          )}
          , lamps and logic of <Field {...field('idleAmps')} /> and relays of <Field {...field('switchedAmps')} then="," /> with <Field {...field('railFarads')} /> across it.
        </p>
        <p>
          It sits in air of <Field {...field('airCelsius')} /> with <Field {...field('creepageMetres')} /> between its mains and its rail. The chassis’ earth <Field {...field('earth')} then=";" /> the output’s negative{' '}
          <Field {...field('bond')} then="," /> and the rail <Field {...field('reach')} then="." /> The mains is <Field {...field('mainsVolts')} /> at <Field {...field('mainsHertz')} then="," /> give or take{' '}
          <Field {...field('mainsSpread')} then="." />
        </p>
      </Sentence>
      <Results state={state}>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        <div class="pictures">
          <div class="compare" data-count={view.starts.length}>
            {view.starts.map((card) => (
              <Start key={card.name} card={card} />
            ))}
          </div>
          <Plot data={view.plot} />
        </div>
        <Working steps={view.working} sources={sources} />
        <HandOn instance={instance} links={view.handOn} />
      </Results>
    </>
  );
}

export default island(
  () => import('./state.ts').then((module) => module.converterCheck),
  ConverterCheckCalculator,
  () => new Worker(new URL('./converter-check.worker.ts', import.meta.url), { type: 'module' }),
);
