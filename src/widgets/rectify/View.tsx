import type { VNode } from 'preact';
import { Corners } from '../shared/corners.tsx';
import { CycleCircuit } from '../shared/cycle-circuit.tsx';
import { Field } from '../shared/field.tsx';
import { Findings } from '../shared/findings-list.tsx';
import { HandOn } from '../shared/hand-on.tsx';
import { island } from '../shared/island.tsx';
import { Results } from '../shared/results.tsx';
import { Sentence } from '../shared/sentence.tsx';
import { Stairs } from '../shared/stairs.tsx';
import { showMarked, showQuantity } from '../shared/units.ts';
import type { ViewProps } from '../shared/use-calculator.ts';
import { Working } from '../shared/working.tsx';
import type { rectify } from './state.ts';

function RectifyView({ state, sources }: ViewProps<typeof rectify>): VNode {
  const { field, view, values, instance, stale } = state;
  const floor = values.floorVolts === undefined ? {} : { neededVolts: values.floorVolts, neededName: 'the lowest volts asked for' };
  return (
    <>
      <Sentence state={state} drag="loadAmps">
        <p>
          A winding rated <Field {...field('windingVolts')} /> at <Field {...field('windingAmps')} /> that rises{' '}
          <Field {...field('regulation')} /> unloaded feeds a <Field {...field('topology')} /> of <Field {...field('diode')} />{' '}
          rated <Field {...field('diodeVolts')} /> and a reservoir of{' '}
          <Field {...field('farads')} /> rated <Field {...field('ratedVolts')} /> in air of <Field {...field('airCelsius')} then="." /> The load takes{' '}
          <Field {...field('loadAmps')} /> <Field {...field('draws')} then="," /> and its rail must not dip below <Field {...field('floorVolts')} then="." /> The mains
          is <Field {...field('mainsVolts')} /> at <Field {...field('mainsHertz')} then="," /> give or take <Field {...field('mainsSpread')} then="." />
        </p>
      </Sentence>
      <Results state={state}>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        <div class="pictures">
          <CycleCircuit
            instance={instance}
            cycle={view.cycle}
            corner={view.worstCorner}
            {...floor}
            sheet={{ windingText: `${showMarked(values.windingVolts, 'V')} AC`, reservoirText: showMarked(values.farads, 'F'), loadText: showQuantity(values.loadAmps, 'A') }}
          />
          <Stairs
            instance={instance}
            stairs={view.stairs}
            {...(view.spareVolts === undefined ? {} : { spareVolts: view.spareVolts })}
            caption={`Where every volt goes at ${view.worstCorner}.`}
          />
        </div>
        <Working steps={view.working} sources={sources} />
        <HandOn instance={instance} links={view.handOn} />
      </Results>
    </>
  );
}

export default island(() => import('./state.ts').then((module) => module.rectify), RectifyView);
