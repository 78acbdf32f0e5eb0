import type { ComponentChildren, VNode } from 'preact';
import { Corners } from '../shared/corners.tsx';
import { Field } from '../shared/field.tsx';
import { Findings } from '../shared/findings-list.tsx';
import { HandOn } from '../shared/hand-on.tsx';
import { island } from '../shared/island.tsx';
import { Results } from '../shared/results.tsx';
import { RowsFieldView } from '../shared/rows-field.tsx';
import { Sentence } from '../shared/sentence.tsx';
import { showQuantity } from '../shared/units.ts';
import type { FieldHandle, ViewProps } from '../shared/use-calculator.ts';
import { Working } from '../shared/working.tsx';
import type { loadList } from './state.ts';

type CellOf = (name: string) => FieldHandle;

/** What of a load is asked, by its kind. */
function detailOf(kind: string, cell: CellOf): ComponentChildren {
  switch (kind) {
    case 'relay':
      return (
        <>
          with a coil of <Field {...cell('volts')} /> and <Field {...cell('ohms')} />
        </>
      );
    case 'heater':
      return (
        <>
          rated <Field {...cell('volts')} /> at <Field {...cell('amps')} />
        </>
      );
    case 'fixed-watts':
      return (
        <>
          taking <Field {...cell('watts')} />
        </>
      );
    default:
      return (
        <>
          taking <Field {...cell('amps')} />
        </>
      );
  }
}

function RowSentence({ cell }: { readonly cell: CellOf }): VNode {
  const several = cell('count').raw.trim() !== '1';
  return (
    <>
      <Field {...cell('count')} /> × <Field {...cell('kind')} /> <Field {...cell('name')} /> {detailOf(cell('kind').raw, cell)}
      {several && (
        <>
          {', '}
          <Field {...cell('onAtOnce')} /> on at once
        </>
      )}
    </>
  );
}

const KINDS = [
  { label: 'Add a relay', given: { kind: 'relay', name: 'Relay' } },
  { label: 'Add an indicator', given: { kind: 'indicator', name: 'Lamp' } },
  { label: 'Add heaters', given: { kind: 'heater', name: '12AX7', volts: 12.6, amps: 0.15 } },
  { label: 'Add something else', given: { kind: 'fixed-amps', name: 'Load', amps: 0.05 } },
];

function LoadListView({ state, sources }: ViewProps<typeof loadList>): VNode {
  const { field, rows, view, instance, stale } = state;
  const loads = rows('loads');
  return (
    <>
      <Sentence state={state} drag="railVolts">
        <p>
          A rail of <Field {...field('railVolts')} />, give or take <Field {...field('railSpread')} then="," /> in air of{' '}
          <Field {...field('airCelsius')} then="," /> feeds the loads below. A margin of <Field {...field('margin')} /> is kept for what is asked for
          later.
        </p>
      </Sentence>
      <RowsFieldView
        handle={loads}
        nameOf={(index) => loads.rows[index]?.['name'] ?? ''}
        kinds={KINDS}
        sentence={(cell) => <RowSentence cell={cell} />}
        result={(index) => {
          const line = view.lines[index];
          return line === undefined || stale ? '' : <span class="value">{showQuantity(line.typicalAmps, 'A')}</span>;
        }}
      />
      <Results state={state}>
        <Corners corners={view.figures} stale={stale} instance={instance} />
        <p class="rests-on">
          The margin is for what comes later: another relay, a brighter lamp, and the figures here that are only typical. It costs little now and a
          transformer later.
        </p>
        <Findings findings={view.findings} sources={sources} />
        <Working steps={view.working} sources={sources} />
        <HandOn instance={instance} links={view.handOn} />
      </Results>
    </>
  );
}

export default island(() => import('./state.ts').then((module) => module.loadList), LoadListView);
