import amps from '../../../content/shop/amps.json';
import { CONVERTERS, bleederWatts, fuseStandard, fuseGates, storedJoules, wire, wireOhms, yCapacitorAmps } from '../../compute/index.ts';
import { PROTECTIVE_BOND_OHMS, UNEARTHED_TOUCH_RMS_AMPS } from '../../compute/grounding/limits.ts';
import { given, type Shop } from '../shop.ts';
import { HAND_DC_OHMS, handRmsAmps, tarnLine } from './high-voltage.ts';
import { figure, solved, worked, type Worked } from './worked.ts';

/** The shop's discharge probe: a resistor in an insulated handle, held on for five time constants. */
const PROBE = { ohms: 4700, watts: 10, constants: 5 };

/** A charged reservoir shorted by a tool: its own series resistance and the tool's. Supposed. */
const TOOL_OHMS = 1;

/** From the outlet's live to its earth, through the fault and both leads. Supposed. */
const FAULT_LOOP_OHMS = 0.8;

/** A mains lead, and the capacitor from line to chassis that some old two-wire amps have. Supposed. */
const LEAD = { metres: 3, wire: 'metric-0-75' };
const OLD_CAPACITOR_FARADS = 47e-9;

/** The building's own protection behind the outlet, and the sensitivity of a residual-current device for people. Supposed. */
const BUILDING_AMPS = 16;
const RESIDUAL_AMPS = 0.03;

/** A quarter of a variable transformer's travel. */
const VARIAC_SHARE = 0.25;

/** Everything that lesson 3 says of the Tarn 45 on the bench, and of amps without an earth. */
export function work(shop: Shop): Worked<string> & { readonly residual: { readonly handAmps: string; readonly seen: string } } {
  const { amp, mains } = shop.tarn45;
  const volts = given(amp.highTensionVolts, 'the high voltage of the Tarn 45');
  const winding = given(amps['tarn-45'].windings.find(({ kind }) => kind === 'high-voltage'), 'its high-voltage winding');
  const { firstFarads, secondFarads, preampFarads, mainsFuse } = tarnLine;
  const allFarads = firstFarads + secondFarads + preampFarads;
  const ratedAmps = given(amp.transformer?.ratedVoltAmps, 'its transformer’s rating') / mains.nominalVolts;
  const unloaded = (winding.volts * Math.SQRT2 * mains.highVolts) / mains.nominalVolts;
  const lead = wireOhms({ row: wire(LEAD.wire), metres: LEAD.metres });
  const faultAmps = mains.nominalVolts / FAULT_LOOP_OHMS;
  const opens = fuseGates({ standard: fuseStandard(mainsFuse.standard), ratedAmps: mainsFuse.ratedAmps }).at(-1);
  const module = given(CONVERTERS[0], 'a converter');
  const { quillon20 } = shop;
  const old = yCapacitorAmps({ farads: OLD_CAPACITOR_FARADS, mainsVolts: quillon20.mains.nominalVolts, hertz: quillon20.mains.hertz });
  const probeSeconds = (farads: number): number => PROBE.constants * PROBE.ohms * farads;
  const fennel = given(shop.fennel100.amp.highTensionVolts, 'the high voltage of the Fennel 100');

  const figures = {
    highVolts: figure(volts, 'V'),
    unloaded: solved(unloaded, 'V'),
    mains: figure(mains.nominalVolts, 'V'),
    first: figure(firstFarads, 'F'),
    probe: figure(PROBE.ohms, 'Ω'),
    probeWatts: figure(PROBE.watts, 'W'),
    probeTime: solved(probeSeconds(firstFarads), 's', 2),
    allTime: solved(probeSeconds(allFarads), 's', 2),
    probeAmps: solved(volts / PROBE.ohms, 'A', 2),
    probeHeat: solved(bleederWatts({ ohms: PROBE.ohms, volts }), 'W', 2),
    probeJoules: solved(storedJoules({ farads: firstFarads, volts }), 'J', 2),
    probeLeft: solved(volts * Math.exp(-PROBE.constants), 'V', 1),
    constants: figure(PROBE.constants, ''),
    toolOhms: figure(TOOL_OHMS, 'Ω'),
    toolAmps: solved(volts / TOOL_OHMS, 'A', 2),
    bond: figure(PROTECTIVE_BOND_OHMS.value, 'Ω'),
    leadLength: figure(LEAD.metres, 'm'),
    leadOhms: solved(lead, 'Ω', 2),
    bondWithLead: solved(PROTECTIVE_BOND_OHMS.value + lead, 'Ω', 2),
    loop: figure(FAULT_LOOP_OHMS, 'Ω'),
    faultAmps: solved(faultAmps, 'A', 2),
    fuseAmps: figure(mainsFuse.ratedAmps, 'A'),
    faultTimes: solved(faultAmps / mainsFuse.ratedAmps, '', 2),
    opensTimes: figure(opens?.multiple ?? Number.NaN, ''),
    opensTime: figure(opens?.maxSeconds ?? Number.NaN, 's'),
    mainsHand: solved(handRmsAmps({ volts: mains.nominalVolts, hertz: mains.hertz }), 'A', 2),
    handAmps: solved(volts / HAND_DC_OHMS, 'A'),
    residual: figure(RESIDUAL_AMPS, 'A'),
    nothing: figure(0, 'A'),
    oldMains: figure(quillon20.mains.nominalVolts, 'V'),
    oldCapacitor: figure(OLD_CAPACITOR_FARADS, 'F'),
    oldAmps: solved(old, 'A', 2),
    oldTimes: solved(old / UNEARTHED_TOUCH_RMS_AMPS.value, '', 2),
    unearthedLimit: figure(UNEARTHED_TOUCH_RMS_AMPS.value, 'A'),
    moduleLeak: figure(module.leakageAmps, 'A'),
    building: figure(BUILDING_AMPS, 'A'),
    ratedAmps: solved(ratedAmps, 'A', 2),
    buildingHeat: solved((BUILDING_AMPS / ratedAmps) ** 2, '', 2),
    variac: figure(VARIAC_SHARE, '%'),
    variacVolts: solved(volts * VARIAC_SHARE, 'V'),
    quizVolts: figure(fennel, 'V'),
    quizFarads: figure(100e-6, 'F'),
    quizTool: solved(fennel / TOOL_OHMS, 'A', 2),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;

  return {
    ...worked({
      figures,
      names: {},
      asked: ['probe', 'quizFarads', 'quizTool', 'mainsHand', 'handAmps', 'residual', 'moduleLeak', 'unearthedLimit', 'building', 'buildingHeat', 'fuseAmps', 'constants', 'highVolts'],
      answers: { 'probe-time': probeSeconds(figures.quizFarads.value) },
      opened: {},
      steps: [
        {
          ask: 'Which range does the meter need?',
          words: 'Not the volts on the drawing: the most that can be there. That is the winding’s crest on strong mains with nothing drawing.',
          sum: `${figure(winding.volts, 'V').text} × 1.414 × ${figure(mains.highVolts / mains.nominalVolts, '').text} = ${text('unloaded')}`,
        },
        {
          ask: 'How long must the probe stay on C1?',
          words: `${text('constants')} time constants, so that less than a hundredth is left.`,
          sum: `${text('constants')} × ${text('probe')} × ${text('first')} = ${text('probeTime')}`,
        },
        {
          ask: 'What does the probe’s resistor go through?',
          words: 'Its current and its heat at the first touch. The heat falls as the square, and the whole of it is what C1 held.',
          sum: `${text('highVolts')} / ${text('probe')} = ${text('probeAmps')}, ${text('probeHeat')}, ${text('probeJoules')} in all`,
        },
        {
          ask: 'What is left then?',
          words: `Each time constant leaves a little over a third. After ${text('constants')} of them the meter should read this, and fall on.`,
          sum: `${text('highVolts')} × e⁻⁵ = ${text('probeLeft')}`,
          left: true,
        },
        {
          ask: 'What happens if the link is still on when the power comes back?',
          words: `It is the same resistor, now without an end to it. A ${text('probeWatts')} part smokes: that is why the label hangs on the plug.`,
          sum: `(${text('highVolts')})² / ${text('probe')} = ${text('probeHeat')}`,
          left: true,
        },
      ],
    }),
    residual: { handAmps: text('handAmps'), seen: text('nothing') },
  };
}
