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
import type { windingEstimate } from './state.ts';

function WindingEstimateCalculator({ state, sources }: ViewProps<typeof windingEstimate>): VNode {
  const { field, view, instance, stale } = state;
  return (
    <>
      <Sentence state={state} drag="heavierVolts">
        <p>
          A <Field {...field('purpose')} /> winding reads <Field {...field('lighterVolts')} /> at <Field {...field('lighterAmps')} /> with the mains at{' '}
          <Field {...field('lighterMains')} then="," /> and <Field {...field('heavierVolts')} /> loaded with <Field {...field('heavierAmps')} /> and the mains at{' '}
          <Field {...field('heavierMains')} then="." /> Nominal mains is <Field {...field('mainsVolts')} then="," /> give or take <Field {...field('mainsSpread')} then="." />
        </p>
        <p>
          The voltmeter may be out by <Field {...field('voltsGain')} /> and <Field {...field('voltsCounts')} /> besides, the current by <Field {...field('ampsGain')} then="." /> An
          ohmmeter reads <Field {...field('ohmmeterOhms')} />
          {view.ohmmeter && (
            <>
              , with the amp <Field {...field('proved')} />
            </>
          )}
          .
        </p>
        <p>
          The winding has <Field {...field('ratedAmps')} then="," /> carries <Field {...field('carriedAmps')} /> already, and <Field {...field('wantedAmps')} /> is wanted of it
          besides.
        </p>
      </Sentence>
      <p>
        <strong>Clip meter and load on with the plug out and the amp proved dead.</strong> Then power it, hands off, and read; plug out again before anything is moved.
      </p>
      <Results state={state}>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        <div class="pictures">
          <Plot data={view.plot} />
        </div>
        <Working steps={view.working} sources={sources} />
        {view.handOn.length > 0 && <HandOn instance={instance} links={view.handOn} />}
      </Results>
    </>
  );
}

export default island(() => import('./state.ts').then((module) => module.windingEstimate), WindingEstimateCalculator);
