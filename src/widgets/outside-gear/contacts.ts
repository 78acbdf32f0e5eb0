import { checkEntryTimes, checkJoinedContact, checkSwitchedShare } from '../../compute/findings/jack.ts';
import type { Finding } from '../../compute/findings.ts';
import { entryTimes, joinedContact, type JoinedContact } from '../../compute/parts/jack-entry.ts';
import { workingStep, type WorkingStep } from '../../compute/supplies/working.ts';
import { showMarked } from '../shared/units.ts';
import type { Values } from './fields.ts';

/** A contact of the jack that the switch can join to the sleeve. */
export interface SwitchedContact {
  readonly contact: 'tip' | 'ring';
  readonly feeds: Exclude<Values['tip'] | Values['ring'], 'none'>;
  /** Of what it feeds, without the resistor at the jack; 0 for the bare rail. */
  readonly ohms: number;
  /** While it is joined by switch and cable. */
  readonly joined: JoinedContact;
}

const NAMES: Record<SwitchedContact['feeds'], string> = { coil: 'coil', logic: 'input', led: 'indicator', 'rail-positive': 'rail' };

/** Tip and ring, as far as they carry the rail. None where an optocoupler keeps it off the jack, or the sleeve is on its positive already. */
export function switchedContacts(values: Values, volts: number): readonly SwitchedContact[] {
  const { tip, tipOhms, ring, ringOhms, entryOhms, cableOhms, gear, sleeve, limitAmps } = values;
  // Only a sleeve at the negative draws current through what hangs on the positive.
  if (gear === 'optocoupler' || (sleeve !== 'rail-negative' && sleeve !== 'chassis')) return [];
  const at = (contact: 'tip' | 'ring', feeds: SwitchedContact['feeds'], fed: number): SwitchedContact => {
    const ohms = feeds === 'rail-positive' ? 0 : fed;
    return { contact, feeds, ohms, joined: joinedContact({ volts, loadOhms: ohms, entryOhms, cableOhms, limitAmps }) };
  };
  return [at('tip', tip, tipOhms), ...(ring === 'none' ? [] : [at('ring', ring, ringOhms)])];
}

const through = ({ feeds, ohms }: SwitchedContact, entryOhms: number): string => {
  const entry = entryOhms > 0 ? ` and ${showMarked(entryOhms, 'Ω')} at the jack` : '';
  return feeds === 'rail-positive' ? (entryOhms > 0 ? `through the ${showMarked(entryOhms, 'Ω')} at the jack` : 'with nothing in the way') : `through its ${NAMES[feeds]} of ${showMarked(ohms, 'Ω')}${entry}`;
};

/** What each contact does joined to the sleeve, at once and for good. */
export function contactFindings(values: Values, volts: number, contacts: readonly SwitchedContact[]): readonly Finding[] {
  const { entryOhms, entryWatts, entryFarads, cableOhms, cableMetres, cableFarads, limitAmps, loadAmps } = values;
  const context = { corner: 'the highest rail', restsOn: ['typical', 'assumed'] } as const;
  return contacts.flatMap((each) => {
    // The plug itself joins them: the cable is not in the way then.
    const atOnce = joinedContact({ volts, loadOhms: each.ohms, entryOhms, cableOhms: 0, limitAmps });
    const held = checkJoinedContact({ ...context, contact: each.contact, through: through(each, entryOhms), joined: atOnce, spareAmps: Math.max(0, limitAmps - loadAmps), entryOhms, entryRatedWatts: entryWatts });
    if (each.feeds === 'coil') return [held, checkSwitchedShare({ ...context, contact: each.contact, feeds: NAMES.coil, volts, share: each.joined.share })];
    if (each.feeds !== 'logic') return [held];
    const times = entryTimes({ pullUpOhms: each.ohms, entryOhms, cableOhms, entryFarads, cableFarads: cableMetres * cableFarads });
    return [held, checkEntryTimes({ ...context, times })];
  });
}

/** The sums behind them. */
export function contactSteps(values: Values, volts: number, contacts: readonly SwitchedContact[]): readonly WorkingStep[] {
  const { entryOhms, cableOhms, cableMetres, cableFarads, entryFarads } = values;
  return contacts.flatMap((each) => {
    const pressed = workingStep({
      name: `pressed-${each.contact}`, words: `What the switch passes with the ${each.contact} joined to the sleeve at the end of the cable.`, formula: each.joined.amps < values.limitAmps ? 'I = V / (Rl + Re + Rc)' : 'The most that the supply gives',
      numbers: [{ symbol: 'V', value: volts, unit: 'V' }, { symbol: 'Rl', value: each.ohms, unit: 'Ω' }, { symbol: 'Re', value: entryOhms, unit: 'Ω' }, { symbol: 'Rc', value: cableOhms, unit: 'Ω' }],
      result: { symbol: 'I', value: each.joined.amps, unit: 'A' }, source: { id: 'arithmetic' },
    });
    if (each.feeds !== 'logic') return [pressed];
    const farads = entryFarads + cableMetres * cableFarads;
    const times = entryTimes({ pullUpOhms: each.ohms, entryOhms, cableOhms, entryFarads, cableFarads: cableMetres * cableFarads });
    return [
      pressed,
      workingStep({
        name: `rise-${each.contact}`, words: 'How long the input takes to half of the rail once the switch opens: pull-up into the capacitor and the cable.', formula: 'Pull-up times capacitance, by a logarithm near 0.7',
        numbers: [{ symbol: 'R', value: each.ohms, unit: 'Ω' }, { symbol: 'C', value: farads, unit: 'F' }], result: { symbol: 't', value: times.riseSeconds, unit: 's' }, source: { id: 'arithmetic' },
      }),
    ];
  });
}
