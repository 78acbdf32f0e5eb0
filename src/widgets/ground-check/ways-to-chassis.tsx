import type { VNode } from 'preact';
import type { CalculatorState, FieldHandle } from '../shared/use-calculator.ts';
import type { fields } from './fields.ts';
import { FIELD_OF } from './points.ts';
import type { PointState } from './sheet.ts';
import type { Cure, GroundCheckView } from './state.ts';

type State = CalculatorState<typeof fields, GroundCheckView>;

/** Turns one way to the chassis on or off. */
export const toggle = ({ raw, change }: FieldHandle): void => change(raw === 'chassis' ? 'open' : 'chassis');

function Way({ state, point }: { readonly state: State; readonly point: PointState }): VNode {
  const handle = state.field(FIELD_OF[point.point]);
  const isClosed = handle.raw === 'chassis';
  return (
    <li {...(point.isFault ? { 'data-fault': '' } : {})}>
      <label>
        <input type="checkbox" id={handle.id} data-field={handle.id} checked={isClosed} disabled={!state.alive} onChange={() => toggle(handle)} /> {point.name}
      </label>
      <span class="way-amps">{!isClosed ? 'open' : point.ampsText === undefined ? '' : `${point.ampsText}${point.isFault ? ' · fault' : ''}`}</span>
    </li>
  );
}

/** The same switches as in the drawing, as a plain list. */
export function WaysToChassis({ state, points, legend }: { readonly state: State; readonly points: readonly PointState[]; readonly legend: string }): VNode {
  return (
    <fieldset class="ways" id={`${state.instance}-ways`} onFocusIn={state.prepare} onPointerOver={state.prepare}>
      <legend>{legend}</legend>
      <ul>
        {points.map((point) => (
          <Way key={point.point} state={state} point={point} />
        ))}
      </ul>
    </fieldset>
  );
}

/** One too many, and the change that cures it, ready to be made. */
export function Cures({ state, cures }: { readonly state: State; readonly cures: readonly Cure[] }): VNode | null {
  if (cures.length === 0) return null;
  const make = (cure: Cure): void => {
    state.fill(Object.fromEntries(cure.open.map((name) => [name, 'open'])));
    // The button goes with the fault; the work goes on at the switch that was opened.
    const [first] = cure.open;
    if (first !== undefined) document.getElementById(state.field(first).id)?.focus();
  };
  return (
    <div class="cures" role="group" aria-label="One too many">
      <p>
        <strong>One too many.</strong> {cures.length === 1 ? 'The smallest change that cures it:' : 'What is best kept, and the smallest change:'}
      </p>
      {cures.map((cure) => (
        <p key={cure.label}>
          <button class="button" type="button" disabled={!state.alive} onClick={() => make(cure)}>
            {cure.label}
          </button>
          {cure.then !== '' && <span class="rests-on"> Then {cure.then}.</span>}
        </p>
      ))}
    </div>
  );
}
