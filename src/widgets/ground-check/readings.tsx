import type { VNode } from 'preact';
import type { HeaterBalance, LegSwing } from '../../compute/grounding/heater-balance.ts';
import type { ContactPotential } from '../../compute/grounding/jack-potentials.ts';
import { showQuantity } from '../shared/units.ts';
import { showAmps } from './show-amps.ts';
import type { AtMains } from './state.ts';

const volts = (value: number): string => showQuantity(value, 'V');

function Leg({ name, swing }: { readonly name: string; readonly swing: LegSwing }): VNode {
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>{volts(swing.meanVolts)}</td>
      <td>{volts(swing.acVolts)}</td>
      <td>{`${volts(swing.minVolts)} to ${volts(swing.maxVolts)}`}</td>
    </tr>
  );
}

/** How the winding’s ends, or a jack’s contacts, stand above the chassis. */
export function Potentials(props: { readonly heater: HeaterBalance | undefined; readonly contacts: readonly ContactPotential[]; readonly isFloating: boolean }): VNode | null {
  const { heater, contacts, isFloating } = props;
  if (heater === undefined && contacts.length === 0) return null;
  return (
    <div class="table-box">
      <table class="readings">
        <caption>Above the chassis{isFloating ? ', by a 10 MΩ meter: only leakage decides' : ''}</caption>
        <thead>
          <tr>
            <td />
            <th scope="col">DC</th>
            <th scope="col">AC, RMS</th>
            <th scope="col">lowest to highest</th>
          </tr>
        </thead>
        <tbody>
          {heater !== undefined && <Leg name="first end of the heaters" swing={heater.first} />}
          {heater !== undefined && <Leg name="second end of the heaters" swing={heater.second} />}
          {contacts.map(({ jackName, side, dcVolts, acVolts, peakVolts }) => (
            <tr key={`${jackName}-${side}`}>
              <th scope="row">{`${side} of ${jackName}`}</th>
              <td>{volts(dcVolts)}</td>
              <td>{volts(acVolts)}</td>
              <td>{`${volts(peakVolts)} at most`}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The same grounds on weak, usual and strong mains. */
export function ByMains({ rows }: { readonly rows: readonly AtMains[] }): VNode | null {
  if (rows.length === 0) return null;
  return (
    <div class="table-box">
      <table class="readings">
        <caption>By the mains</caption>
        <thead>
          <tr>
            <td />
            <th scope="col">between grounds</th>
            <th scope="col">rail</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, betweenAmps, railVolts }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{showAmps(betweenAmps)}</td>
              <td>{volts(railVolts)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
