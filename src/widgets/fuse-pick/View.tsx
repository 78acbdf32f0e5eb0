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
import type { StandardCard, fusePick } from './state.ts';

function Standard({ card }: { readonly card: StandardCard }): VNode {
  return (
    <section class="option" {...(card.taken ? { 'data-best': '' } : {})}>
      <h3>{card.name}</h3>
      <p class="value">{card.rating}</p>
      <p>{card.words}</p>
      <Verdict level={card.level} />
    </section>
  );
}

function FusePickCalculator({ state, sources }: ViewProps<typeof fusePick>): VNode {
  const { field, view, instance, stale } = state;
  return (
    <>
      <Sentence state={state} drag="loadAmps">
        <p>
          A winding rated <Field {...field('windingVolts')} /> at <Field {...field('windingAmps')} /> that rises <Field {...field('regulation')} /> unloaded feeds a <Field {...field('topology')} /> of{' '}
          <Field {...field('diode')} then="," /> a reservoir of <Field {...field('farads')} /> and a load of <Field {...field('loadAmps')} then="." />
        </p>
        <p>
          The fuse sits <Field {...field('place')} then="." /> It is <Field {...field('fuse')} />
          {view.shows.fitted && (
            <>
              , of <Field {...field('fuseAmps')} />
            </>
          )}
          , made to <Field {...field('standard')} then="," /> and is to live through <Field {...field('starts')} /> switch-ons.
        </p>
        <p>
          The transformer’s marking: <Field {...field('mark')} then=";" /> its insulation is of <Field {...field('insulationClass')} then="." />{' '}
          {view.shows.primary ? (
            <>
              The mains can drive <Field {...field('prospectiveAmps')} /> into a short here.
            </>
          ) : (
            <>
              On the mains side stands <Field {...field('mainsSide')} then="." />
            </>
          )}{' '}
          The mains is <Field {...field('mainsVolts')} /> at <Field {...field('mainsHertz')} then="," /> give or take <Field {...field('mainsSpread')} then=";" /> the air in the chassis is at{' '}
          <Field {...field('airCelsius')} then="." />
        </p>
      </Sentence>
      <Results state={state}>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        <div class="pictures">
          {view.standards.length > 0 && (
            <div class="compare" data-count={view.standards.length}>
              {view.standards.map((card) => (
                <Standard key={card.name} card={card} />
              ))}
            </div>
          )}
          <Plot data={view.plot} />
        </div>
        <Working steps={view.working} sources={sources} />
        <HandOn instance={instance} links={view.handOn} />
      </Results>
    </>
  );
}

export default island(
  () => import('./state.ts').then((module) => module.fusePick),
  FusePickCalculator,
  () => new Worker(new URL('./fuse-pick.worker.ts', import.meta.url), { type: 'module' }),
);
