import type { VNode } from 'preact';
import { Corners } from '../shared/corners.tsx';
import { CycleCircuit } from '../shared/cycle-circuit.tsx';
import { Field } from '../shared/field.tsx';
import { Findings } from '../shared/findings-list.tsx';
import { island } from '../shared/island.tsx';
import { Results } from '../shared/results.tsx';
import { Sentence } from '../shared/sentence.tsx';
import { Stairs } from '../shared/stairs.tsx';
import type { ViewProps } from '../shared/use-calculator.ts';
import { Working } from '../shared/working.tsx';
import { headroom } from './state.ts';

function HeadroomView({ state, sources }: ViewProps<typeof headroom>): VNode {
  const { field, view, instance, stale } = state;
  const { labels } = view;
  return (
    <>
      <Sentence state={state} drag="loadAmps">
        <p>
          A winding rated <Field {...field('windingVolts')} /> at <Field {...field('windingAmps')} /> that rises{' '}
          <Field {...field('regulation')} /> unloaded feeds a <Field {...field('topology')} /> of <Field {...field('diode')} /> and{' '}
          <Field {...field('farads')} /> rated <Field {...field('ratedVolts')} />. A <Field {...field('regulator')} />
          {view.adjustable && (
            <>
              {' '}
              set to <Field {...field('setVolts')} />
            </>
          )}{' '}
          feeds <Field {...field('loadAmps')} />. The mains is <Field {...field('mainsVolts')} /> at <Field {...field('mainsHertz')} />, give or take{' '}
          <Field {...field('mainsSpread')} />; the air in the chassis is at <Field {...field('airCelsius')} /> and the regulator has{' '}
          <Field {...field('heatsink')} />.
        </p>
      </Sentence>
      <Results state={state}>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        <Stairs instance={instance} stairs={view.stairs} spareVolts={view.spareVolts} caption={`Where every volt goes at ${view.worstCorner}, and what is left over.`} />
        <CycleCircuit
          instance={instance}
          cycle={view.cycle}
          corner={view.worstCorner}
          neededVolts={view.neededVolts}
          sheet={{ windingText: labels.winding, reservoirText: labels.reservoir, loadText: labels.load, regulator: { name: labels.regulator, railText: labels.rail } }}
        />
        <Working steps={view.working} sources={sources} />
      </Results>
    </>
  );
}

export default island(headroom, HeadroomView);
