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
import type { reservoir } from './state.ts';

function ReservoirCalculator({ state, sources }: ViewProps<typeof reservoir>): VNode {
  const { field, view, instance, stale } = state;
  return (
    <>
      <Sentence state={state} drag="farads">
        <p>
          A reservoir of <Field {...field('farads')} /> rated <Field {...field('ratedVolts')} /> and <Field {...field('ratedRipple')} /> of ripple, <Field {...field('type')} then="," />{' '}
          its plus end <Field {...field('polarity')} then="," /> sits in air of <Field {...field('airCelsius')} /> and must last <Field {...field('wantedSeconds')} then="." />
        </p>
        <p>
          It feeds <Field {...field('loadAmps')} /> without dipping below <Field {...field('floorVolts')} then="," /> from a winding rated <Field {...field('windingVolts')} /> at{' '}
          <Field {...field('windingAmps')} /> that rises <Field {...field('regulation')} /> unloaded, through a <Field {...field('topology')} /> of <Field {...field('diode')} /> rated{' '}
          <Field {...field('diodeVolts')} then="." /> The mains is <Field {...field('mainsVolts')} /> at <Field {...field('mainsHertz')} then="," /> give or take{' '}
          <Field {...field('mainsSpread')} then="." />
        </p>
      </Sentence>
      <Results state={state}>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        <div class="pictures">
          <Plot data={view.plot} />
        </div>
        <Working steps={view.working} sources={sources} />
        <HandOn instance={instance} links={view.handOn} />
      </Results>
    </>
  );
}

export default island(() => import('./state.ts').then((module) => module.reservoir), ReservoirCalculator);
