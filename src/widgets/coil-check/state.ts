import { bySeverity, worstLevel, type Basis, type Finding, type Level } from '../../compute/findings.ts';
import { checkCoilPullIn, checkCoilVolts } from '../../compute/findings/coil.ts';
import { ANODE_SWING, checkCoilToContact, checkContactLoad, checkContactVolts } from '../../compute/findings/contacts.ts';
import { checkDriverVolts, checkRelease } from '../../compute/findings/release.ts';
import type { Insulation } from '../../compute/grounding/connections.ts';
import { coilOnRail, releaseSpread, type CoilOnRail, type ReleaseSpread } from '../../compute/parts/coil-on-rail.ts';
import { relayOfKind, type RelayCoil } from '../../compute/parts/relay.ts';
import type { Suppression } from '../../compute/parts/suppression.ts';
import type { WorkingStep } from '../../compute/supplies/working.ts';
import { loadList } from '../load-list/state.ts';
import type { CornerFigure } from '../shared/corners.tsx';
import { defineCalculator, type ValuesOf, type ViewModel } from '../shared/definition.ts';
import { handOn } from '../shared/hand-links.ts';
import type { HandOnLink } from '../shared/hand-on.tsx';
import { leadWithHazard } from '../shared/lead-with-hazard.ts';
import type { PlotData } from '../shared/plot-data.ts';
import { levelOfRule } from '../shared/chain-view.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import { coilCheckFace, fields } from './fields.ts';
import { coilWorking } from './working.ts';

type Values = ValuesOf<typeof fields>;

/** One way of taking up the coil's current, beside the others. */
export interface SuppressionChoice {
  readonly name: string;
  readonly chosen: boolean;
  /** "17 ms at most" */
  readonly letsGo: string;
  readonly usually: string;
  readonly switchSees: string;
  readonly level: Level;
}

export interface CoilCheckView extends ViewModel {
  readonly needs: { readonly zener: boolean; readonly resistor: boolean; readonly signal: boolean; readonly printedInsulation: boolean };
  readonly corners: readonly CornerFigure[];
  readonly findings: readonly Finding[];
  readonly choices: readonly SuppressionChoice[];
  readonly plot: PlotData;
  readonly working: readonly WorkingStep[];
  readonly handOn: readonly HandOnLink[];
}

const coilOf = ({ kind, ratedVolts, ohms, pullIn }: Values): RelayCoil =>
  relayOfKind({ kind, ratedVolts, ...(ohms === undefined ? {} : { ohms }), ...(pullIn === undefined ? {} : { mustOperateRatio: pullIn }) });

const railOf = (values: Values, coil: RelayCoil, airCelsius = values.airCelsius): CoilOnRail => ({
  coil, airCelsius, lowestVolts: values.lowestVolts, highestVolts: values.highestVolts, dropVolts: values.dropVolts, seriesOhms: values.seriesOhms ?? 0,
});

const suppressionOf = (kind: Values['suppression'], { zenerVolts, acrossOhms }: Values): Suppression =>
  kind === 'diode-zener' ? { kind, volts: zenerVolts } : kind === 'resistor' ? { kind, ohms: acrossOhms } : { kind };

const insulationOf = ({ insulation, insulationVolts }: Values, coil: RelayCoil): Insulation =>
  insulation === 'unknown' ? { kind: 'unknown' }
  : insulation === 'test' ? { kind: 'test-voltage-only', testVolts: coil.contacts.coilToContactVolts }
  : { kind: insulation, workingVolts: insulationVolts };

const workingVoltsOf = ({ contactsAt, signalVolts, highVolts }: Values): number =>
  contactsAt === 'signal' ? signalVolts : contactsAt === 'high' ? highVolts : ANODE_SWING * highVolts;

/** What a figure of the coil stands on: its own sheet, its class, or a size that heat and inductance were guessed from. */
const restsOn = (coil: RelayCoil): readonly Basis[] => [...new Set<Basis>([coil.basis, 'assumed'])];

function contactFindings(values: Values, coil: RelayCoil): readonly Finding[] {
  const { contacts } = coil;
  const workingVolts = workingVoltsOf(values);
  const corner = values.contactsAt === 'anode' ? 'the peak of the output anode’s swing, twice B+' : 'whatever the rail does';
  const signal = values.contactsAt === 'signal';
  return [
    checkCoilToContact({ corner, restsOn: [coil.basis], workingVolts, insulation: insulationOf(values, coil), railOutside: values.rail === 'outside' }),
    checkContactVolts({ corner, restsOn: ['typical'], workingVolts, ratedVolts: contacts.maxVoltsDc, movedLive: !signal && values.moved === 'live' }),
    ...(signal ? [checkContactLoad({ corner, restsOn: ['typical'], minLoad: contacts.minLoad })] : []),
  ];
}

const NAMES: Record<Values['suppression'], (values: Values) => string> = {
  diode: () => 'A diode',
  'diode-zener': ({ zenerVolts }) => `A diode and a zener of ${showMarked(zenerVolts, 'V')}`,
  resistor: ({ acrossOhms }) => `A resistor of ${showMarked(acrossOhms, 'Ω')}`,
  none: () => 'Nothing',
};

function choiceOf(kind: Values['suppression'], values: Values, spread: (kind: Values['suppression']) => ReleaseSpread): SuppressionChoice {
  const { longestSeconds, usualSeconds, switchVolts } = spread(kind);
  const suppression = suppressionOf(kind, values);
  const context = { corner: '', restsOn: ['assumed'] as const };
  const found = [
    checkRelease({ ...context, suppression, longestSeconds, wantedSeconds: values.wantedSeconds }),
    checkDriverVolts({ ...context, suppression, switchedBy: values.switchedBy, switchVolts, ratedVolts: values.driverVolts }),
  ];
  return {
    name: NAMES[kind](values),
    chosen: kind === values.suppression,
    letsGo: kind === 'none' ? 'ends in an arc' : `${showQuantity(longestSeconds, 's', 2)} at most`,
    usually: kind === 'none' ? 'time not reckoned' : `usually ${showQuantity(usualSeconds, 's', 2)}`,
    switchSees: `${showQuantity(switchVolts, 'V')}${kind === 'none' ? ' and more' : ''} on what opens it`,
    level: worstLevel(found),
  };
}

const PLOT_CELSIUS = Array.from({ length: 23 }, (_, at) => -10 + 5 * at);

function plotOf(values: Values, coil: RelayCoil): PlotData {
  const at = PLOT_CELSIUS.map((celsius) => coilOnRail(railOf(values, coil, celsius)));
  return {
    caption: 'The relay pulls in for sure while the solid line runs above the dashed one. Hot copper raises the dashed line; the dotted one is what the coil may bear, and falls.',
    x: { name: 'air about the relay', unit: '°C', values: PLOT_CELSIUS },
    series: [
      { name: 'lowest at the coil', kind: 'volts', unit: 'V', values: at.map((each) => each.lowestAtCoil) },
      { name: 'sure to pull in from', kind: 'needed', unit: 'V', values: at.map((each) => each.operateVolts) },
      { name: 'coil bears at most', kind: 'other', unit: 'V', values: at.map((each) => each.limitVolts) },
    ],
    markAt: values.airCelsius,
  };
}

function cornersOf(values: Values, margin: ReturnType<typeof coilOnRail>, release: ReleaseSpread, findings: readonly Finding[]): readonly CornerFigure[] {
  const spare = `${showQuantity(Math.abs(margin.marginVolts), 'V')} ${margin.marginVolts < 0 ? 'short' : 'to spare'}`;
  const bare = values.suppression === 'none';
  return [
    {
      name: `lowest rail · ${showMarked(values.lowestVolts, 'V')}`, value: margin.lowestAtCoil, unit: 'V', of: 'at the coil', level: levelOfRule(findings, 'coil-pull-in'),
      found: `hot, it needs ${showQuantity(margin.operateVolts, 'V')}: ${spare}`, restsOn: 'assumed rise per watt',
    },
    {
      name: `highest rail · ${showMarked(values.highestVolts, 'V')}`, value: margin.coilCelsius, unit: '°C', of: 'coil', level: levelOfRule(findings, 'coil-volts'),
      found: `${showQuantity(margin.highestAtCoil, 'V')} of the ${showQuantity(margin.limitVolts, 'V')} it bears`, restsOn: 'assumed rise per watt',
    },
    {
      name: 'switched off', value: bare ? release.switchVolts : release.longestSeconds, unit: bare ? 'V' : 's', of: bare ? 'kick, at least' : 'at most',
      level: worstLevel(findings.filter(({ rule }) => rule === 'coil-release' || rule === 'driver-volts')),
      found: `${showQuantity(release.switchVolts, 'V')}${bare ? ' and more' : ''} on what opens it, rated ${showMarked(values.driverVolts, 'V')}`, restsOn: 'assumed inductance',
    },
  ];
}

/** What the verdict is about, where the sentence before it does not say so. */
const ASIDES: Readonly<Record<string, string>> = {
  'coil-to-contact': '. What matters most is the barrier between its contacts and its coil',
  'contact-volts': '. What matters most is the voltage on its contacts',
  'contact-load': '. Its contacts are made for more than a signal',
  'coil-volts': '. Its coil gets close to what it bears, or more',
};

function solve(values: Values): CoilCheckView {
  const coil = coilOf(values);
  const margin = coilOnRail(railOf(values, coil));
  const spread = (kind: Values['suppression']): ReleaseSpread =>
    releaseSpread({ coil, lowestVolts: values.lowestVolts, highestVolts: values.highestVolts, highestAtCoil: margin.highestAtCoil, suppression: suppressionOf(kind, values) });
  const release = spread(values.suppression);
  const suppression = suppressionOf(values.suppression, values);
  const hot = `the lowest rail, straight after the coil was on at the highest, in air of ${showMarked(values.airCelsius, '°C')}`;
  const off = { corner: 'the highest rail, a cold coil of least resistance', restsOn: restsOn(coil) };
  const findings = [
    checkCoilPullIn({ corner: hot, restsOn: restsOn(coil), coil: 'The relay', coilMinVolts: margin.lowestAtCoil, operateVolts: margin.operateVolts, ratedVolts: coil.ratedVolts, coilCelsius: margin.coilCelsius }),
    checkCoilVolts({ corner: `the highest rail, air of ${showMarked(values.airCelsius, '°C')}`, restsOn: ['typical'], coil: 'The coil', coilMaxVolts: margin.highestAtCoil, limitVolts: margin.limitVolts }),
    checkRelease({ ...off, suppression, longestSeconds: release.longestSeconds, wantedSeconds: values.wantedSeconds }),
    checkDriverVolts({ ...off, suppression, switchedBy: values.switchedBy, switchVolts: release.switchVolts, ratedVolts: values.driverVolts }),
    ...contactFindings(values, coil),
  ];
  const pulls = margin.marginVolts < 0 ? 'may stay silent when hot' : 'pulls in when hot';
  const lets = values.suppression === 'none' ? 'nothing takes up the coil’s current as it is switched off' : `has let go within ${showQuantity(release.longestSeconds, 's')}`;
  const worst = [...findings].sort(bySeverity)[0];
  const aside = worst === undefined || worst.level === 'within' ? '' : (ASIDES[worst.rule] ?? '');
  return {
    level: worstLevel(findings),
    summary: leadWithHazard(findings, `${pulls}, ${showQuantity(Math.abs(margin.marginVolts), 'V')} ${margin.marginVolts < 0 ? 'short' : 'to spare'}; ${lets}${aside}`),
    needs: {
      zener: values.suppression === 'diode-zener',
      resistor: values.suppression === 'resistor',
      signal: values.contactsAt === 'signal',
      printedInsulation: values.insulation === 'basic' || values.insulation === 'reinforced',
    },
    corners: cornersOf(values, margin, release, findings),
    findings,
    choices: fields.suppression.options.map(({ value }) => choiceOf(value, values, spread)),
    plot: plotOf(values, coil),
    working: coilWorking({
      coil, margin, release, lowestVolts: values.lowestVolts, dropVolts: values.dropVolts, seriesOhms: values.seriesOhms ?? 0, airCelsius: values.airCelsius,
      clampVolts: suppression.kind === 'diode' || suppression.kind === 'diode-zener' ? release.switchVolts - values.highestVolts : undefined,
    }),
    handOn: [handOn(loadList, { what: `${showMarked(coil.ratedVolts, 'V')}, ${showMarked(coil.ohms, 'Ω')}`, given: { airCelsius: values.airCelsius, loads: [{ kind: 'relay', name: 'Relay', count: 1, volts: coil.ratedVolts, ohms: coil.ohms }] } })],
  };
}

export const coilCheck = defineCalculator({
  ...coilCheckFace,
  quantities: { volts: 'highestVolts', mustOperateRatio: 'pullIn', 'suppression.volts': 'zenerVolts', 'suppression.ohms': 'acrossOhms', railVolts: 'highestVolts' },
  solve,
});
