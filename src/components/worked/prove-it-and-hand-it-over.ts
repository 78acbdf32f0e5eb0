import { compareSupplies, copperOhms, deratedOutput, openJob, wire, wireOhms, yCapacitorAmps, yCapacitorFarads } from '../../compute/index.ts';
import { PROTECTIVE_BOND_OHMS, TOUCH_RMS_AMPS, UNEARTHED_TOUCH_RMS_AMPS } from '../../compute/grounding/limits.ts';
import { given, type Shop } from '../shop.ts';
import { handRmsAmps } from './high-voltage.ts';
import { figure, solved, worked, type Worked } from './worked.ts';

/** The Fennel's mains lead: its length, and how its conductor is made up. Supposed. */
const LEAD = { metres: 3, wire: 'metric-0-75', strandMetres: 0.2e-3 };
/** A lead worn down to one strand over this length. Supposed. */
const NECK_METRES = 0.02;
/** Currents of a hand meter and of a bond tester; and the volts of an insulation tester. */
const METER_AMPS = 1e-3;
const BOND_AMPS = 25;
const INSULATION_VOLTS = 500;
const INSULATION_OHMS = 1e6;
/** Electric strength of a reinforced barrier, order of size; to be read in the standard. */
const STRENGTH_VOLTS = 3000;
/** From the amp's own windings to its core, all told. Supposed. */
const OWN_FARADS = 1.5e-9;
/** Copper: density, specific heat, melting point. */
const COPPER = { kilogramsPerCubicMetre: 8960, joulesPerKilogramKelvin: 385, meltsCelsius: 1085 };
const ROOM_CELSIUS = 20;
/** For the quiz: another lead, another module. */
const OTHER_LEAD = { metres: 5, wire: 'metric-1' };
const OTHER = { farads: 2.2e-9, volts: 264, hertz: 60 };

/** Everything that lesson 23 says of the Fennel 100 before it goes back. */
export function work(shop: Shop): Worked<string> {
  const job = shop.fennel100;
  const { mains, amp } = job;
  const { converter } = compareSupplies(openJob(job)).supplies.converter;
  const { part, loadAmps } = given(converter, 'a converter for the Fennel 100');

  const lead = wireOhms({ row: wire(LEAD.wire), metres: LEAD.metres });
  const strandArea = (Math.PI / 4) * LEAD.strandMetres ** 2;
  const neck = copperOhms({ squareMetres: strandArea, metres: NECK_METRES });
  const neckWatts = BOND_AMPS ** 2 * neck;
  // Nothing leaves so short a strand in its first second, and its resistance only rises: it melts sooner than this.
  const neckJoulesPerKelvin = strandArea * NECK_METRES * COPPER.kilogramsPerCubicMetre * COPPER.joulesPerKilogramKelvin;
  const neckSeconds = (neckJoulesPerKelvin * (COPPER.meltsCelsius - ROOM_CELSIUS)) / neckWatts;

  const moduleFarads = yCapacitorFarads({ leakageAmps: part.leakageAmps });
  const leak = (farads: number, volts: number): number => yCapacitorAmps({ farads, mainsVolts: volts, hertz: mains.hertz });
  const own = leak(OWN_FARADS, mains.nominalVolts);
  const module = leak(moduleFarads, mains.nominalVolts);
  const high = leak(OWN_FARADS + moduleFarads, mains.highVolts);
  const gives = deratedOutput({ part, airCelsius: amp.airCelsius }).amps;

  const figures = {
    mains: figure(mains.nominalVolts, 'V'),
    highMains: figure(mains.highVolts, 'V'),
    hertz: figure(mains.hertz, 'Hz'),
    rail: figure(job.rail.volts, 'V'),
    bond: figure(PROTECTIVE_BOND_OHMS.value, 'Ω'),
    leadLength: figure(LEAD.metres, 'm'),
    leadOhms: solved(lead, 'Ω', 2),
    limitWithLead: solved(PROTECTIVE_BOND_OHMS.value + lead, 'Ω'),
    neck: figure(NECK_METRES, 'm'),
    neckOhms: solved(neck, 'Ω', 2),
    wornLead: solved(lead + neck, 'Ω', 2),
    meterAmps: figure(METER_AMPS, 'A'),
    bondAmps: figure(BOND_AMPS, 'A'),
    neckWatts: solved(neckWatts, 'W', 2),
    neckSeconds: solved(neckSeconds, 's', 1),
    insulationVolts: figure(INSULATION_VOLTS, 'V'),
    insulationOhms: figure(INSULATION_OHMS, 'Ω'),
    throughInsulation: solved(mains.nominalVolts / INSULATION_OHMS, 'A', 2),
    strength: figure(STRENGTH_VOLTS, 'V'),
    strengthDc: solved(STRENGTH_VOLTS * Math.SQRT2, 'V', 2),
    moduleFarads: solved(moduleFarads, 'F', 2),
    strengthAmps: solved((module * STRENGTH_VOLTS) / mains.nominalVolts, 'A', 2),
    moduleLeak: figure(part.leakageAmps, 'A'),
    ownFarads: figure(OWN_FARADS, 'F'),
    before: solved(own, 'A'),
    module: solved(module, 'A'),
    after: solved(own + module, 'A'),
    afterHigh: solved(high, 'A'),
    touchLimit: figure(TOUCH_RMS_AMPS.value, 'A'),
    unearthedLimit: figure(UNEARTHED_TOUCH_RMS_AMPS.value, 'A'),
    mainsHand: solved(handRmsAmps({ volts: mains.nominalVolts, hertz: mains.hertz }), 'A', 2),
    everything: solved(loadAmps.everything, 'A'),
    gives: solved(gives, 'A'),
    spare: solved(gives - loadAmps.everything, 'A'),
    air: figure(amp.airCelsius, '°C'),
    otherLead: figure(OTHER_LEAD.metres, 'm'),
    otherFarads: figure(OTHER.farads, 'F'),
    otherVolts: figure(OTHER.volts, 'V'),
    otherHertz: figure(OTHER.hertz, 'Hz'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return worked({
    figures,
    names: { part: part.name, wireName: wire(LEAD.wire).name, otherWire: wire(OTHER_LEAD.wire).name },
    asked: ['bond', 'otherLead', 'otherWire', 'otherFarads', 'otherVolts', 'otherHertz', 'wornLead', 'bondAmps', 'neckSeconds', 'mains', 'mainsHand', 'insulationVolts'],
    answers: {
      'another-lead': PROTECTIVE_BOND_OHMS.value + wireOhms({ row: wire(OTHER_LEAD.wire), metres: OTHER_LEAD.metres }),
      'another-module': yCapacitorAmps({ farads: OTHER.farads, mainsVolts: OTHER.volts, hertz: OTHER.hertz }),
    },
    opened: {},
    steps: [
      { ask: 'What may the earth read, from the plug’s pin to the chassis?', words: 'The limit for the bond, and the lead on top.', sum: `${text('bond')} + ${text('leadOhms')} = ${text('limitWithLead')}` },
      { ask: 'What leaked to earth before the work?', words: `${text('ownFarads')} from the windings to the core (supposed), at ${text('mains')} and ${text('hertz')}.`, sum: `2π × ${text('hertz')} × ${text('ownFarads')} × ${text('mains')} = ${text('before')}` },
      { ask: 'What does the module add?', words: `Its sheet gives ${text('moduleLeak')}, which is a capacitor of ${text('moduleFarads')} from the mains to its output; the output is bonded to the chassis.`, sum: `${text('before')} + ${text('module')} = ${text('after')}; at ${text('highMains')}, ${text('afterHigh')}` },
      { ask: 'Within which limits?', words: 'Read with the earth opened by the tester, mains both ways round. An earthed part may carry more; this is what a hand would meet if the earth were lost.', sum: `${text('afterHigh')} against ${text('touchLimit')}: within; against ${text('unearthedLimit')} for a part without earth: not` },
      { ask: 'What goes on the label as spare?', words: `The module gives ${text('gives')} in air of ${text('air')}. Take off everything on at once.`, sum: `${text('gives')} − ${text('everything')} = ${text('spare')}` },
    ],
  });
}
