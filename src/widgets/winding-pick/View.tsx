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
import type { Rung, WindingPickView, windingPick } from './state.ts';

type State = ViewProps<typeof windingPick>['state'];

/** The transformer: what is printed on the one in hand, and what is to be read on any. */
function TransformerSentence({ field, view, values }: Pick<State, 'field' | 'values'> & { readonly view: WindingPickView }): VNode {
  return (
    <p>
      The transformer is <Field {...field('which')} />
      {view.shows.inHand && (
        <>
          {': '}
          {values.topology === 'centre-tap' ? 'two secondaries as a centre tap' : <Field {...field('secondaries')} />} of <Field {...field('secondaryVolts')} />
          {values.topology !== 'centre-tap' && values.secondaries === 'one' ? '' : ' each'}, <Field {...field('voltAmps')} /> in all, rising{' '}
          <Field {...field('rise')} /> unloaded
        </>
      )}
      {view.shows.joined && (
        <>
          , with <Field {...field('freeEndVolts')} /> read between their free ends
        </>
      )}
      . Its marking says <Field {...field('madeFor')} /> and <Field {...field('mark')} then="." />
    </p>
  );
}

function OneRung({ rung }: { readonly rung: Rung }): VNode {
  return (
    <section class="option" {...(rung.picked ? { 'data-best': '' } : {})}>
      <h3>{rung.picked ? `${rung.name} (taken)` : rung.name}</h3>
      <p class="value">{rung.spare}</p>
      <p>{rung.heat}</p>
      <Verdict level={rung.level} />
    </section>
  );
}

function WindingPickCalculator({ state, sources }: ViewProps<typeof windingPick>): VNode {
  const { field, view, values, instance, stale } = state;
  return (
    <>
      <Sentence state={state} drag="loadAmps">
        <p>
          A rail through <Field {...field('regulator')} />
          {view.shows.railVolts && (
            <>
              {' '}
              of <Field {...field('setVolts')} />
            </>
          )}{' '}
          must feed <Field {...field('loadAmps')} then="." /> The rectifier is a <Field {...field('topology')} /> of <Field {...field('diode')} /> rated{' '}
          <Field {...field('diodeVolts')} then="." />
        </p>
        <TransformerSentence field={field} view={view} values={values} />
        <p>
          The mains is <Field {...field('mainsVolts')} /> at <Field {...field('mainsHertz')} then="," /> give or take <Field {...field('mainsSpread')} then=";" /> the air in the chassis is at{' '}
          <Field {...field('airCelsius')} /> and the regulator has <Field {...field('heatsink')} then="." />
        </p>
      </Sentence>
      <Results state={state}>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <p class="rests-on">{view.reservoir}</p>
        <Findings findings={view.findings} sources={sources} />
        <div class="pictures">
          <div class="compare" data-count={view.rungs.length}>
            {view.rungs.map((rung) => (
              <OneRung key={rung.name} rung={rung} />
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
  () => import('./state.ts').then((module) => module.windingPick),
  WindingPickCalculator,
  () => new Worker(new URL('./winding-pick.worker.ts', import.meta.url), { type: 'module' }),
);
