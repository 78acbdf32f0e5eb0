import type { VNode } from 'preact';
import { GroundingSheet } from '../../drawings/grounding-sheet.tsx';
import { Corners } from '../shared/corners.tsx';
import { Field } from '../shared/field.tsx';
import { Findings } from '../shared/findings-list.tsx';
import { HandOn } from '../shared/hand-on.tsx';
import { island } from '../shared/island.tsx';
import { Results } from '../shared/results.tsx';
import { Sentence } from '../shared/sentence.tsx';
import type { ViewProps } from '../shared/use-calculator.ts';
import { Working } from '../shared/working.tsx';
import { FIELD_OF } from './points.ts';
import { ByMains, Potentials } from './readings.tsx';
import type { groundCheck } from './state.ts';
import { Cures, toggle, WaysToChassis } from './ways-to-chassis.tsx';

type State = ViewProps<typeof groundCheck>['state'];

/** What the field says now, whether or not it has been solved. */
const chosen = (state: State, name: Parameters<State['field']>[0]): string => state.field(name).raw;

function Opening({ state }: { readonly state: State }): VNode {
  const { field } = state;
  const isConverter = chosen(state, 'source') === 'converter';
  return (
    <Sentence state={state} drag="loadAmps">
      <p>
        A rail that takes <Field {...field('loadAmps')} /> is fed from <Field {...field('source')} />
        {!isConverter && (
          <>
            {' '}
            with <Field {...field('centre')} /> by a <Field {...field('topology')} />
          </>
        )}
        ; on the panel is <Field {...field('jack')} then="." /> Work the switches: each joins one point to the chassis.
      </p>
    </Sentence>
  );
}

function Switches({ state }: { readonly state: State }): VNode {
  const { view, instance, alive } = state;
  // The switches show what has been asked for at once; amps stand beside those that the solution knows of.
  const points = view.points.map((point) => {
    const isClosed = chosen(state, FIELD_OF[point.point]) === 'chassis';
    return isClosed === point.isClosed ? point : { point: point.point, name: point.name, lines: point.lines, isClosed, isFault: false };
  });
  return (
    <div class="ground-plan">
      <figure class="circuit" onFocusIn={state.prepare} onPointerOver={state.prepare}>
        <GroundingSheet
          id={`${instance}-sheet`}
          {...view.sheet}
          desc={view.description}
          switches={Object.fromEntries(points.map((point) => [point.point, point]))}
          {...(alive ? { onToggle: (point) => toggle(state.field(FIELD_OF[point])) } : {})}
        />
        <figcaption>
          {view.sheet.shape.feed === 'winding' ? 'Currents at high mains, RMS. ' : 'Currents RMS. '}
          {points.some(({ isFault }) => isFault) && 'The ticked line is the way of what would not flow with one ground.'}
        </figcaption>
      </figure>
      <WaysToChassis state={state} points={points} legend="Joined to the chassis" />
    </div>
  );
}

function WindingValues({ state }: { readonly state: State }): VNode {
  const { field } = state;
  const hasCentre = chosen(state, 'centre') !== 'none';
  const isLifted = hasCentre && chosen(state, 'lift') === 'lifted';
  return (
    <p>
      The winding gives <Field {...field('windingVolts')} /> with no load behind <Field {...field('windingOhms')} then="," /> and may carry{' '}
      <Field {...field('windingAmps')} then="." />{' '}
      {chosen(state, 'source') === 'heater-winding' && (
        <>
          It heats valves that take <Field {...field('heaterAmps')} /> at <Field {...field('heaterVolts')} then="." />{' '}
        </>
      )}
      {chosen(state, 'centre') === 'resistors' && (
        <>
          The two resistors are <Field {...field('centreOhms')} /> each, rated <Field {...field('centreWatts')} then="." />{' '}
        </>
      )}
      {hasCentre && (
        <>
          From its centre the switch leads on <Field {...field('lift')} />
          {isLifted && (
            <>
              {' '}
              by <Field {...field('liftVolts')} then="," /> with <Field {...field('liftOhms')} /> below and <Field {...field('liftFarads')} /> across that
            </>
          )}
          .{' '}
        </>
      )}
      The diodes are <Field {...field('diode')} then=";" /> the reservoir is <Field {...field('farads')} then="." /> At the winding’s first end is{' '}
      <Field {...field('windingFuse')} then="." />
    </p>
  );
}

function Made({ state }: { readonly state: State }): VNode {
  const { field } = state;
  const isConverter = chosen(state, 'source') === 'converter';
  const jack = chosen(state, 'jack');
  return (
    <>
      <h3 class="made">What it is made of</h3>
      <Sentence state={state} drag={isConverter ? 'railVolts' : 'windingVolts'}>
        {isConverter ? (
          <p>
            The converter gives <Field {...field('railVolts')} /> and, into a short, <Field {...field('limitAmps')} then=";" /> its leakage is <Field {...field('leakageAmps')} then="." />
          </p>
        ) : (
          <WindingValues state={state} />
        )}
        <p>
          From the rail’s negative the switch leads on by <Field {...field('bond')} />
          {chosen(state, 'bond') === 'resistor' && (
            <>
              {' '}
              of <Field {...field('bondOhms')} />
            </>
          )}
          .{' '}
          {(jack === 'negative' || jack === 'chassis') && (
            <>
              The jack’s tip is fed through <Field {...field('tipOhms')} then="." />{' '}
            </>
          )}
          {jack !== 'none' && (
            <>
              What is plugged in comes by a cable of <Field {...field('cableOhms')} /> and has its earth <Field {...field('earthOhms')} /> away.{' '}
            </>
          )}
          Protective earth of the chassis is <Field {...field('ampEarth')} then="." /> B+ is <Field {...field('highVolts')} then=";" /> the rail’s insulation from it and from the mains is{' '}
          <Field {...field('insulation')} then="," /> and its relays switch <Field {...field('contacts')} then="." />
        </p>
        <p>
          The mains is <Field {...field('mainsVolts')} /> at <Field {...field('mainsHertz')} then="," /> give or take <Field {...field('mainsSpread')} then=";" /> its fuse is{' '}
          <Field {...field('mainsFuse')} then="," /> <Field {...field('fuseKind')} then="," /> and carries <Field {...field('otherAmps')} /> besides.
        </p>
      </Sentence>
    </>
  );
}

function GroundCheckView({ state, sources }: ViewProps<typeof groundCheck>): VNode {
  const { view, instance, stale, values, pending } = state;
  return (
    <>
      <Opening state={state} />
      <Switches state={state} />
      <Results state={state}>
        <Cures state={state} cures={view.cures} />
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        {pending && <p class="rests-on late">Insulation, leakage and single failures are not judged yet.</p>}
        <div class="plots readings-pair">
          <Potentials heater={view.heater} contacts={view.contacts} isFloating={view.points.every(({ isClosed }) => !isClosed)} />
          <ByMains rows={view.atMains} />
        </div>
        {values.source !== 'converter' && (
          <p class="rests-on">
            A tapped winding is taken as two halves of half the volts and half the ohms. That counts the primary’s share twice over when a half works alone: the current of a real transformer may be up to a third higher. Inductance is
            left out.
          </p>
        )}
      </Results>
      <Made state={state} />
      <Working steps={view.working} sources={sources} />
      <HandOn instance={instance} links={view.handOn} />
    </>
  );
}

export default island(
  () => import('./state.ts').then((module) => module.groundCheck),
  GroundCheckView,
  () => new Worker(new URL('./ground-check.worker.ts', import.meta.url), { type: 'module' }),
);
