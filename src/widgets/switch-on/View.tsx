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
import { Working } from '../shared/working.tsx';
import type { SwitchOnView, switchOn } from './state.ts';

type State = ViewProps<typeof switchOn>['state'];

/** What hangs on the rail when the mains comes. */
function LoadSentence({ field, view }: Pick<State, 'field'> & { readonly view: SwitchOnView }): VNode {
  return (
    <p>
      It feeds heaters of <Field {...field('heaterAmps')} />
      {view.shows.heaters && (
        <>
          {' '}
          that take <Field {...field('coldRatio')} /> times that cold
        </>
      )}
      , lamps and logic of <Field {...field('steadyAmps')} then="," /> and <Field {...field('coils')} /> relays on from the start
      {view.shows.coils && (
        <>
          , each a <Field {...field('coilKind')} /> of <Field {...field('coilVolts')} />
        </>
      )}
      .
    </p>
  );
}

function SwitchOnCalculator({ state, sources }: ViewProps<typeof switchOn>): VNode {
  const { field, view, instance, stale } = state;
  return (
    <>
      <Sentence state={state} drag="farads">
        <p>
          A winding rated <Field {...field('windingVolts')} /> at <Field {...field('windingAmps')} /> that rises <Field {...field('regulation')} /> unloaded feeds a <Field {...field('topology')} /> of{' '}
          <Field {...field('diode')} /> and an empty reservoir of <Field {...field('farads')} then="." /> The rail comes through <Field {...field('regulator')} />
          {view.shows.railVolts && (
            <>
              {' '}
              of <Field {...field('setVolts')} />
            </>
          )}
          {view.shows.regulator && (
            <>
              {' '}
              with <Field {...field('outputFarads')} /> behind it
            </>
          )}
          .
        </p>
        <LoadSentence field={field} view={view} />
        <p>
          The mains is <Field {...field('mainsVolts')} /> at <Field {...field('mainsHertz')} then="," /> give or take <Field {...field('mainsSpread')} then=";" /> the air in the chassis is at <Field {...field('airCelsius')} then="." />
        </p>
      </Sentence>
      <Results state={state}>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        <div class="plots">
          {view.plots.map((plot, index) => (
            <Plot key={index} data={plot} />
          ))}
        </div>
        <Working steps={view.working} sources={sources} />
        <HandOn instance={instance} links={view.handOn} />
      </Results>
    </>
  );
}

export default island(
  () => import('./state.ts').then((module) => module.switchOn),
  SwitchOnCalculator,
  () => new Worker(new URL('./switch-on.worker.ts', import.meta.url), { type: 'module' }),
);
