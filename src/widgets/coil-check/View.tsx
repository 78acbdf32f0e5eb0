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
import type { CoilCheckView, SuppressionChoice, coilCheck } from './state.ts';

type State = ViewProps<typeof coilCheck>['state'];

/** What is across the coil and what opens it. */
function SwitchSentence({ field, view }: Pick<State, 'field'> & { readonly view: CoilCheckView }): VNode {
  return (
    <p>
      It is switched by <Field {...field('switchedBy')} /> that drops <Field {...field('dropVolts')} /> and bears <Field {...field('driverVolts')} then="," /> with{' '}
      <Field {...field('suppression')} />
      {view.needs.zener && (
        <>
          {' '}
          of <Field {...field('zenerVolts')} />
        </>
      )}
      {view.needs.resistor && (
        <>
          {' '}
          of <Field {...field('acrossOhms')} />
        </>
      )}{' '}
      across its coil, and must have let go within <Field {...field('wantedSeconds')} then="." />
    </p>
  );
}

/** What the contacts work at, and where the coil's rail can be touched. */
function ContactSentence({ field, view }: Pick<State, 'field'> & { readonly view: CoilCheckView }): VNode {
  return (
    <p>
      Its contacts switch <Field {...field('contactsAt')} />
      {view.needs.signal ? (
        <>
          {' '}
          of at most <Field {...field('signalVolts')} />
        </>
      ) : (
        <>
          , in an amp with a B+ of <Field {...field('highVolts')} then="," /> <Field {...field('moved')} />
        </>
      )}
      ; between them and the coil is printed <Field {...field('insulation')} />
      {view.needs.printedInsulation && (
        <>
          {' '}
          for <Field {...field('insulationVolts')} />
        </>
      )}
      . The coil’s rail <Field {...field('rail')} then="." />
    </p>
  );
}

function Choice({ choice }: { readonly choice: SuppressionChoice }): VNode {
  return (
    <section class="option" {...(choice.chosen ? { 'data-best': '' } : {})}>
      <h3>{choice.chosen ? `${choice.name} (chosen)` : choice.name}</h3>
      <p class="value">{choice.letsGo}</p>
      <p>
        {choice.usually}; {choice.switchSees}
      </p>
      <Verdict level={choice.level} />
    </section>
  );
}

function CoilCheckCalculator({ state, sources }: ViewProps<typeof coilCheck>): VNode {
  const { field, view, instance, stale } = state;
  return (
    <>
      <Sentence state={state} drag="airCelsius">
        <p>
          A <Field {...field('kind')} /> of <Field {...field('ratedVolts')} /> with a coil of <Field {...field('ohms')} then="," /> sure to pull in from{' '}
          <Field {...field('pullIn')} then="," /> sits in air of <Field {...field('airCelsius')} /> on a rail of <Field {...field('lowestVolts')} /> at its lowest and{' '}
          <Field {...field('highestVolts')} /> at its highest, with <Field {...field('seriesOhms')} /> in series.
        </p>
        <SwitchSentence field={field} view={view} />
        <ContactSentence field={field} view={view} />
      </Sentence>
      <Results state={state}>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        <div class="pictures">
          <div class="compare" data-count={view.choices.length}>
            {view.choices.map((choice) => (
              <Choice key={choice.name} choice={choice} />
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

export default island(() => import('./state.ts').then((module) => module.coilCheck), CoilCheckCalculator);
