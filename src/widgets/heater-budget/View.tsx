import type { VNode } from 'preact';
import { Corners } from '../shared/corners.tsx';
import { Field } from '../shared/field.tsx';
import { Findings } from '../shared/findings-list.tsx';
import { HandOn } from '../shared/hand-on.tsx';
import { island } from '../shared/island.tsx';
import { Plot } from '../shared/plot.tsx';
import { Results } from '../shared/results.tsx';
import { RowsFieldView } from '../shared/rows-field.tsx';
import { Sentence } from '../shared/sentence.tsx';
import { showQuantity } from '../shared/units.ts';
import type { ViewProps } from '../shared/use-calculator.ts';
import { Verdict } from '../shared/verdict-mark.tsx';
import { Working } from '../shared/working.tsx';
import type { HeaterBudgetView, VariantCard, heaterBudget } from './state.ts';

type State = ViewProps<typeof heaterBudget>['state'];

/** What the winding carries, line by line. */
function Ledger({ ledger }: { readonly ledger: HeaterBudgetView['ledger'] }): VNode {
  return (
    <div class="table-box" tabIndex={0} role="group" aria-label="What the winding carries">
      <table>
        <caption>What the winding carries at {ledger.corner}. {ledger.left}</caption>
        <thead>
          <tr>
            <th scope="col">of it</th>
            <th scope="col">RMS</th>
          </tr>
        </thead>
        <tbody>
          {ledger.lines.map(({ name, amps, isResult }) => (
            <tr key={name}>
              <th scope="row">{isResult === true ? <strong>{name}</strong> : name}</th>
              <td>{isResult === true ? <strong>{showQuantity(amps, 'A')}</strong> : showQuantity(amps, 'A')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Variant({ card }: { readonly card: VariantCard }): VNode {
  return (
    <section class="option" {...(card.taken ? { 'data-best': '' } : {})}>
      <h3>{card.taken ? `${card.name} (taken)` : card.name}</h3>
      <p class="value">{card.spare}</p>
      <p>{card.cost}</p>
      <Verdict level={card.level} />
    </section>
  );
}

/** What ties winding and rail to the chassis, and who can touch it. */
function GroundSentence({ field, view }: Pick<State, 'field'> & { readonly view: HeaterBudgetView }): VNode {
  return (
    <p>
      The heaters are held to the chassis by <Field {...field('reference')} />
      {view.shows.lift && (
        <>
          {' '}
          by <Field {...field('liftVolts')} />
        </>
      )}
      , in an amp with a B+ of <Field {...field('highVolts')} /> whose earth <Field {...field('earth')} then="." /> The new rail’s negative <Field {...field('bond')} then="," /> and the rail{' '}
      <Field {...field('reach')} then="." /> Insulation of the winding from mains and B+ is what <Field {...field('insulation')} then="." />
    </p>
  );
}

function HeaterBudgetCalculator({ state, sources }: ViewProps<typeof heaterBudget>): VNode {
  const { field, rows, raw, view, instance, stale } = state;
  const named = raw['heaters'];
  const nameOf = (index: number): string => (Array.isArray(named) ? (named[index]?.['name'] ?? '') : '') || 'valve';
  return (
    <>
      <Sentence state={state} drag="loadAmps">
        <p>
          A heater winding of <Field {...field('windingVolts')} /> unloaded, behind <Field {...field('windingOhms')} /> and rated <Field {...field('ratedAmps')} then="," /> already feeds:
        </p>
        <RowsFieldView
          handle={rows('heaters')}
          nameOf={nameOf}
          kinds={[{ label: 'Add a valve', given: {} }]}
          sentence={(cell) => (
            <>
              <Field {...cell('count')} /> × <Field {...cell('name')} /> of <Field {...cell('volts')} /> and <Field {...cell('amps')} />
            </>
          )}
        />
        <p>
          From the same winding a rail through <Field {...field('regulator')} />
          {view.shows.railVolts && (
            <>
              {' '}
              of <Field {...field('setVolts')} />
            </>
          )}{' '}
          is to feed <Field {...field('loadAmps')} then="," /> by <Field {...field('topology')} /> of <Field {...field('diode')} then="." />
        </p>
        <GroundSentence field={field} view={view} />
        <p>
          The mains transformer is of <Field {...field('transformerVoltAmps')} /> and feeds <Field {...field('presentVoltAmps')} /> already. The mains is <Field {...field('mainsVolts')} /> at{' '}
          <Field {...field('mainsHertz')} then="," /> give or take <Field {...field('mainsSpread')} then=";" /> the air in the chassis is at <Field {...field('airCelsius')} then="." />
        </p>
      </Sentence>
      <Results state={state}>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        <div class="pictures">
          <Ledger ledger={view.ledger} />
          <div class="compare" data-count={view.variants.length}>
            {view.variants.map((card) => (
              <Variant key={card.name} card={card} />
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

export default island(
  () => import('./state.ts').then((module) => module.heaterBudget),
  HeaterBudgetCalculator,
  () => new Worker(new URL('./heater-budget.worker.ts', import.meta.url), { type: 'module' }),
);
