import type { VNode } from 'preact';
import { Field } from '../shared/field.tsx';
import { Findings } from '../shared/findings-list.tsx';
import { HandOn } from '../shared/hand-on.tsx';
import { island } from '../shared/island.tsx';
import { Results } from '../shared/results.tsx';
import { Sentence } from '../shared/sentence.tsx';
import type { ViewProps } from '../shared/use-calculator.ts';
import { Working } from '../shared/working.tsx';
import { Causes, FirstPower, Sheet } from './sheet.tsx';
import type { BenchSheetView, benchSheet } from './state.ts';

type State = ViewProps<typeof benchSheet>['state'];

/** What feeds the rail, down to the regulator. */
function SupplySentence({ field, view }: Pick<State, 'field'> & { readonly view: BenchSheetView }): VNode {
  return (
    <p>
      The rail is fed by <Field {...field('feed')} />{' '}
      {view.shows.winding ? (
        <>
          rated <Field {...field('windingVolts')} /> at <Field {...field('windingAmps')} /> that rises <Field {...field('regulation')} /> unloaded, through a <Field {...field('topology')} /> of{' '}
          <Field {...field('diode')} then="," /> a reservoir of <Field {...field('farads')} />
        </>
      ) : (
        <>
          of <Field {...field('converterVolts')} /> with its limit at <Field {...field('converterAmps')} />
        </>
      )}{' '}
      and <Field {...field('regulator')} />
      {view.shows.railVolts && (
        <>
          {' '}
          for <Field {...field('setVolts')} />
        </>
      )}
      {view.shows.regulator && (
        <>
          {' '}
          on <Field {...field('heatsink')} />
        </>
      )}
      . The load on during the readings is <Field {...field('loadAmps')} then=";" /> the air in the chassis is at <Field {...field('airCelsius')} then="." />
    </p>
  );
}

function BenchSheetCalculator({ state, sources }: ViewProps<typeof benchSheet>): VNode {
  const { field, view, instance } = state;
  return (
    <>
      <Sentence state={state} drag="mainsRead">
        <p>
          On the bench are <Field {...field('meter')} /> and <Field {...field('scope')} then="." /> The mains of the day reads <Field {...field('mainsRead')} then="," /> nominal <Field {...field('mainsVolts')} /> at{' '}
          <Field {...field('mainsHertz')} then="," /> give or take <Field {...field('mainsSpread')} then="." />
        </p>
        <SupplySentence field={field} view={view} />
        <p>
          Besides: <Field {...field('coilKind')} />
          {view.shows.coil && (
            <>
              {' '}
              of <Field {...field('coilVolts')} /> with <Field {...field('zenerVolts')} /> across its coil
            </>
          )}
          ; a ground wire of <Field {...field('groundMetres')} then="." />
        </p>
      </Sentence>
      <Results state={state}>
        <Findings findings={view.findings} sources={sources} />
        <FirstPower hazards={view.firstPower} />
        <Sheet stages={view.stages} field={field} />
        <p class="rests-on">{view.meters}</p>
        <Causes view={view} />
        <Working steps={view.working} sources={sources} />
        {view.handOn.length > 0 && <HandOn instance={instance} links={view.handOn} />}
      </Results>
    </>
  );
}

export default island(
  () => import('./state.ts').then((module) => module.benchSheet),
  BenchSheetCalculator,
  () => new Worker(new URL('./bench-sheet.worker.ts', import.meta.url), { type: 'module' }),
);
