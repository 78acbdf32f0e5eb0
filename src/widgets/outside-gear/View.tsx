import type { VNode } from 'preact';
import { OutsideGearSheet } from '../../drawings/outside-gear-sheet.tsx';
import { Corners } from '../shared/corners.tsx';
import { Field } from '../shared/field.tsx';
import { Findings } from '../shared/findings-list.tsx';
import { HandOn } from '../shared/hand-on.tsx';
import { island } from '../shared/island.tsx';
import { Results } from '../shared/results.tsx';
import { Sentence } from '../shared/sentence.tsx';
import { showMarked, showQuantity } from '../shared/units.ts';
import type { ViewProps } from '../shared/use-calculator.ts';
import { Verdict } from '../shared/verdict-mark.tsx';
import { Working } from '../shared/working.tsx';
import type { ContactVolts, outsideGear } from './state.ts';
import type { TouchCurrent } from './touch.ts';

type State = ViewProps<typeof outsideGear>['state'];

/** What a choice says now, whether or not it has been solved. */
const chosen = (state: State, name: Parameters<State['field']>[0]): string => state.field(name).raw;

function Opening({ state }: { readonly state: State }): VNode {
  const { field } = state;
  const gear = chosen(state, 'gear');
  const isOpto = gear === 'optocoupler';
  return (
    <>
      <p>
        Into a jack that is <Field {...field('mounting')} /> goes <Field {...field('gear')} then="." />{' '}
        {gear !== 'none' && (
          <>
            Its cable is <Field {...field('cableMetres')} /> long, <Field {...field('cableOhms')} /> and <Field {...field('cableFarads')} /> a metre.{' '}
          </>
        )}
        {gear === 'sleeve-to-earth' && (
          <>
            Its own earth is <Field {...field('earthOhms')} /> away from this amp’s and <Field {...field('earthVolts')} /> from it.{' '}
          </>
        )}
      </p>
      {isOpto ? (
        <p>
          It drives the LED of a <Field {...field('part')} /> with <Field {...field('driveVolts')} then="," /> give or take <Field {...field('driveSpread')} then="," /> at <Field {...field('ledAmps')} then=";" /> the output pulls down{' '}
          <Field {...field('pullOhms')} then="." />
        </p>
      ) : (
        <p>
          On the tip is <Field {...field('tip')} />
          {chosen(state, 'tip') !== 'rail-positive' && (
            <>
              {' '}
              of <Field {...field('tipOhms')} />
            </>
          )}
          , on the ring <Field {...field('ring')} />
          {!['none', 'rail-positive'].includes(chosen(state, 'ring')) && (
            <>
              {' '}
              of <Field {...field('ringOhms')} />
            </>
          )}
          , on the sleeve <Field {...field('sleeve')} then=";" /> at the jack each contact has <Field {...field('entryOhms')} /> of <Field {...field('entryWatts')} /> in series and{' '}
          <Field {...field('entryFarads')} /> to the negative.
        </p>
      )}
    </>
  );
}

function SupplyWords({ state }: { readonly state: State }): VNode {
  const { field } = state;
  const isConverter = chosen(state, 'feed') === 'converter';
  return (
    <p>
      The rail comes from <Field {...field('feed')} />
      {isConverter ? (
        <>
          {' '}
          of <Field {...field('railVolts')} /> whose leakage is <Field {...field('leakageAmps')} then="," />
        </>
      ) : (
        <>
          {' '}
          of <Field {...field('windingVolts')} /> behind <Field {...field('windingOhms')} /> with <Field {...field('windingGround')} />
          {chosen(state, 'windingGround') === 'elevated' && (
            <>
              {' '}
              by <Field {...field('liftVolts')} />
            </>
          )}
          ,
        </>
      )}{' '}
      gives at most <Field {...field('limitAmps')} /> and feeds <Field {...field('loadAmps')} /> besides. Its negative is <Field {...field('railGround')} />
      {chosen(state, 'railGround') === 'resistor' && (
        <>
          {' '}
          of <Field {...field('bondOhms')} />
        </>
      )}
      ; protective earth is <Field {...field('ampEarth')} then="." /> B+ is <Field {...field('highVolts')} then=";" /> insulation from it and from the mains is <Field {...field('insulation')} then="," /> and the relays switch{' '}
      <Field {...field('contacts')} then="." /> The mains is <Field {...field('mainsVolts')} /> at <Field {...field('mainsHertz')} then="," /> give or take <Field {...field('mainsSpread')} then="." />
    </p>
  );
}

const MOMENT_NAMES: Record<ContactVolts['moment'], string> = { unplugged: 'nothing plugged in', plugged: 'plugged in', pressed: 'pressed' };

function ContactTable({ contacts }: { readonly contacts: readonly ContactVolts[] }): VNode {
  if (contacts.length === 0) return <p class="rests-on">No contact of the jack is on the rail or the chassis.</p>;
  const moments = [...new Set(contacts.map(({ moment }) => moment))];
  const names = [...new Set(contacts.map(({ contact }) => contact))];
  return (
    <div class="table-box">
      <table class="readings">
        <caption>Above the chassis, at high mains</caption>
        <thead>
          <tr>
            <td />
            {moments.map((moment) => (
              <th key={moment} scope="col">
                {MOMENT_NAMES[moment]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {names.map((name) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {moments.map((moment) => {
                const at = contacts.find((each) => each.contact === name && each.moment === moment);
                return <td key={moment}>{at === undefined ? '' : `${showQuantity(at.dcVolts, 'V')} DC${at.acVolts < 0.01 ? '' : `, ${showQuantity(at.acVolts, 'V')} AC`}${at.level === 'hazard' ? ', beyond touch' : ''}`}</td>;
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function TouchTable({ touch, sources }: { readonly touch: TouchCurrent; readonly sources: Readonly<Record<string, string>> }): VNode {
  return (
    <div class="table-box">
      <table class="readings">
        <caption>{touch.when === 'now' ? 'A hand from the rail to earth, as connected' : 'A hand from the rail to earth, once bond or earth is lost'}</caption>
        <thead>
          <tr>
            <th scope="col">limit</th>
            <th scope="col">a hand passes</th>
            <th scope="col">it is</th>
          </tr>
        </thead>
        <tbody>
          {touch.rows.map((row) => (
            <tr key={row.what}>
              <th scope="row">
                {showMarked(row.limitAmps, 'A')}, {row.what}
                <span class="rests-on"> {sources[row.source.id]?.split(',')[0]}</span>
              </th>
              <td>{showQuantity(row.amps, 'A', 2)}</td>
              <td>
                <Verdict level={row.level} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="rests-on">{`A meter there reads ${showQuantity(touch.openVolts, 'V')} AC. Whether such a limit is met is shown by measurement, with the network of the standard, by somebody equipped for it.`}</p>
    </div>
  );
}

function Drawing({ state }: { readonly state: State }): VNode {
  const { view, values, instance } = state;
  const voltsOf = (contact: ContactVolts['contact']): string | undefined => {
    const at = view.contacts.find((each) => each.contact === contact && each.moment === (values.gear === 'none' ? 'unplugged' : 'plugged'));
    return at === undefined ? undefined : showQuantity(at.dcVolts, 'V');
  };
  const [tip, ring, sleeve] = [voltsOf('tip'), voltsOf('ring'), voltsOf('sleeve')];
  return (
    <figure class="circuit">
      <OutsideGearSheet
        id={`${instance}-sheet`}
        desc={view.description}
        tip={values.tip}
        ring={values.ring}
        sleeve={values.sleeve}
        isOnPanel={values.mounting === 'chassis'}
        hasEntryResistor={values.entryOhms > 0}
        railGround={values.railGround}
        isWindingGrounded={values.feed !== 'converter' && values.windingGround !== 'none'}
        isEarthed={values.ampEarth !== 'absent'}
        gear={values.gear}
        {...(view.sleeveAmps === undefined ? {} : { loop: { text: showQuantity(view.sleeveAmps, 'A', 2), isFault: view.sleeveIsFault } })}
        texts={{
          rail: `rail ${showQuantity(view.railVolts, 'V')}`,
          cable: `${showMarked(values.cableMetres, 'm')}, ${showMarked(values.cableOhms, 'Ω')}`,
          earth: showMarked(values.earthOhms, 'Ω'),
          drive: showMarked(values.driveVolts, 'V'),
          ...(tip === undefined ? {} : { tip }),
          ...(ring === undefined ? {} : { ring }),
          ...(sleeve === undefined ? {} : { sleeve }),
        }}
      />
      <figcaption>{values.gear === 'none' ? 'Volts above the chassis, with nothing plugged in.' : 'Volts above the chassis, plugged in and not pressed.'}</figcaption>
    </figure>
  );
}

function OutsideGearView({ state, sources }: ViewProps<typeof outsideGear>): VNode {
  const { view, instance, stale } = state;
  return (
    <>
      <Sentence state={state} drag="railVolts">
        <Opening state={state} />
        <SupplyWords state={state} />
      </Sentence>
      <Results state={state}>
        <div class="ground-plan">
          <Drawing state={state} />
          <ContactTable contacts={view.contacts} />
        </div>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        {view.touch !== undefined && <TouchTable touch={view.touch} sources={sources} />}
        <Working steps={view.working} sources={sources} />
        <HandOn instance={instance} links={view.handOn} />
      </Results>
    </>
  );
}

export default island(
  () => import('./state.ts').then((module) => module.outsideGear),
  OutsideGearView,
  () => new Worker(new URL('./outside-gear.worker.ts', import.meta.url), { type: 'module' }),
);
