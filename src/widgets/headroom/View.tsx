import type { VNode } from 'preact';
import { Corners } from '../shared/corners.tsx';
import { CycleCircuit } from '../shared/cycle-circuit.tsx';
import { Field } from '../shared/field.tsx';
import { Findings } from '../shared/findings-list.tsx';
import { island } from '../shared/island.tsx';
import { Results } from '../shared/results.tsx';
import { Sentence } from '../shared/sentence.tsx';
import { Stairs } from '../shared/stairs.tsx';
import { showMarked, showQuantity } from '../shared/units.ts';
import type { ViewProps } from '../shared/use-calculator.ts';
import { Working } from '../shared/working.tsx';
import type { headroom } from './state.ts';

function HeadroomView({ state, sources }: ViewProps<typeof headroom>): VNode {
  const { field, view, values, instance, stale } = state;
  return (
    <>
      <Sentence state={state} drag="loadAmps">
        <p>
          A winding rated <Field {...field('windingVolts')} /> at <Field {...field('windingAmps')} /> that rises{' '}
          <Field {...field('regulation')} /> unloaded feeds a <Field {...field('topology')} /> of <Field {...field('diode')} />{' '}
          rated <Field {...field('diodeVolts')} /> and a reservoir of{' '}
          <Field {...field('farads')} /> rated <Field {...field('ratedVolts')} then="." /> A <Field {...field('regulator')} />
          {view.adjustable && (
            <>
              {' '}
              set to <Field {...field('setVolts')} />
            </>
          )}{' '}
          feeds <Field {...field('loadAmps')} then="." /> The mains is <Field {...field('mainsVolts')} /> at <Field {...field('mainsHertz')} then="," /> give or take{' '}
          <Field {...field('mainsSpread')} then=";" /> the air in the chassis is at <Field {...field('airCelsius')} /> and the regulator has{' '}
          <Field {...field('heatsink')} then="." />
        </p>
      </Sentence>
      {view.note !== undefined && <p class="rests-on">{view.note}</p>}
      <Results state={state}>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        <div class="pictures">
          <Stairs instance={instance} stairs={view.stairs} spareVolts={view.spareVolts} caption={`Where every volt goes at ${view.worstCorner}, and what is left over.`} />
          <CycleCircuit
            instance={instance}
            cycle={view.cycle}
            corner={view.worstCorner}
            neededVolts={view.neededVolts}
            neededName="what the regulator may need"
            sheet={{
              windingText: `${showMarked(values.windingVolts, 'V')} AC`,
              reservoirText: showMarked(values.farads, 'F'),
              loadText: showQuantity(values.loadAmps, 'A'),
              regulator: view.regulator,
            }}
          />
        </div>
        <Working steps={view.working} sources={sources} />
      </Results>
    </>
  );
}

export default island(() => import('./state.ts').then((module) => module.headroom), HeadroomView);
