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
import type { IndicatorView, indicator } from './state.ts';

type State = ViewProps<typeof indicator>['state'];
type FieldOf = State['field'];

const Rail = ({ field }: { readonly field: FieldOf }): VNode => (
  <>
    <Field {...field('railVolts')} then="," /> give or take <Field {...field('railSpread')} />
  </>
);

/** Which of the three, and what feeds it. */
function What({ field, view }: { readonly field: FieldOf; readonly view: IndicatorView }): VNode {
  switch (view.what) {
    case 'coil':
      return (
        <p>
          A resistor feeds <Field {...field('what')} /> of <Field {...field('coilVolts')} /> and <Field {...field('coilOhms')} /> each, <Field {...field('coils')} />{' '}
          behind the one resistor, from a rail of <Rail field={field} />.
        </p>
      );
    case 'optocoupler':
      return (
        <p>
          A resistor feeds <Field {...field('what')} then="," /> <Field {...field('part')} then="," /> with <Field {...field('ledAmps')} /> from a rail of{' '}
          <Rail field={field} />. Its output pulls <Field {...field('pullUpVolts')} /> down through <Field {...field('pullUpOhms')} then="." />
        </p>
      );
    case 'led':
      return (
        <p>
          A resistor feeds <Field {...field('what')} then=":" /> <Field {...field('inSeries')} /> × <Field {...field('colour')} /> in a row,{' '}
          <Field {...field('strings')} /> such with a resistor each, at <Field {...field('amps')} /> from <Field {...field('feed')} /> of{' '}
          {view.ac ? (
            <>
              <Field {...field('windingVolts')} then="," /> give or take <Field {...field('mainsSpread')} then="," /> with <Field {...field('across')} /> across it
            </>
          ) : (
            <Rail field={field} />
          )}
          .
        </p>
      );
  }
}

function IndicatorCalculator({ state, sources }: ViewProps<typeof indicator>): VNode {
  const { field, view, instance, stale } = state;
  return (
    <>
      <Sentence state={state} drag="railVolts">
        <What field={field} view={view} />
        <p>
          The resistor is <Field {...field('fittedOhms')} /> rated for <Field {...field('fittedWatts')} then="," /> in air of <Field {...field('airCelsius')} then="." />
        </p>
      </Sentence>
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

export default island(() => import('./state.ts').then((module) => module.indicator), IndicatorCalculator);
