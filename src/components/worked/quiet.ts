import {
  converter, converterResidue, edgePeakVolts, harmonicsOf, heaterLeakageVolts, ledOnAc, ledRow, linearRegulator, loopAmps, magneticVolts, mainsCornersOf, pulsesOnWire, rippleBehindRegulator,
  straightWireHenries, wire, wireOhms, type PulsesOnWire,
} from '../../compute/index.ts';
import type { PulseWaysProps } from '../../drawings/pulse-ways.tsx';
import { given, type Shop } from '../shop.ts';
import { cornerOf, quillonChain, rectifyAt, settledParts } from './small-transformer.ts';
import { tarnCase, tarnRail } from './tarn-spare.ts';
import { figure, solved, worked, type Figure, type Worked } from './worked.ts';

/** The wire that the pulses share with the first stage, and what a poor joint in it adds; supposed. */
const SHARED = { wire: 'awg-22', metres: 0.1, jointOhms: 0.01 } as const;
/** What a guitar gives, and the least of it that may be lost in noise; supposed. */
const SIGNAL_VOLTS = 0.1;
/** A loop of signal wire beside the winding's leads, metres: along them, across, off them; a pair's spacing. Supposed. */
const LOOP = { metres: 0.1, widthMetres: 0.02, distanceMetres: 0.02, pairMetres: 0.0015 } as const;
/** A relay's coil beside a grid: stray, the grid's resistance and the two edges. Supposed. */
const EDGE = { strayFarads: 1.5e-12, gridOhms: 1e6, fastSeconds: 1e-6, slowSeconds: 10e-3 } as const;
/** What an unsuppressed small coil makes when it is cut, from the application notes. */
const KICK_VOLTS = 1000;
/** A section behind the converter; supposed. */
const FILTER = { henries: 22e-6, farads: 220e-6, esrOhms: 0.1 } as const;
/** Leakage from heater to cathode of a poor valve, and its cathode; supposed. */
const LEAK = { amps: 10e-6, ohms: 1500, bypassFarads: 22e-6 } as const;
/** A lamp straight on the heaters, with the resistor it would have; supposed. */
const HEATER_VOLTS = 6.3;
const LAMP_OHMS = 560;
/** Another build for the reader's own sum; supposed. */
const OTHER = { wire: 'awg-20', metres: 0.25, peakAmps: 4 } as const;

const decibels = (ratio: number): string => `${Math.round(20 * Math.log10(ratio)).toFixed(0)}\u00A0dB`;

/** Everything that lesson 18 says of noise: the Tarn 45's charging pulses, strays, edges and residue. Estimates, all of them. */
export function work(shop: Shop): Worked<string> & { readonly ways: Record<'along' | 'apart', PulseWaysProps> } {
  const plan = shop.tarn45;
  const rail = tarnRail(plan);
  const corners = mainsCornersOf(rail.input);
  const row = wire(SHARED.wire);
  const shared = (carries: 'pulses' | 'load'): PulsesOnWire =>
    given(pulsesOnWire({ corners, topology: rail.input.topology, carries, row, metres: SHARED.metres }).find(({ mains }) => mains === 'nominal'), 'nominal mains');
  const pulses = shared('pulses');
  const steady = shared('load');
  const withJoint = pulses.movingPeakVolts + SHARED.jointOhms * (pulses.peakAmps - pulses.corner.rectifier.load.meanAmps);
  const winding = harmonicsOf({ values: loopAmps({ topology: rail.input.topology, rectifier: pulses.corner.rectifier }).winding, hertz: plan.mains.hertz });
  const picked = (returnSpacingMetres?: number): number =>
    Math.sqrt(winding.harmonics.reduce((sum, { hertz, rms }) => {
      const { metres, widthMetres, distanceMetres } = LOOP;
      return sum + magneticVolts({ amps: rms, hertz, metres, widthMetres, distanceMetres, ...(returnSpacingMetres === undefined ? {} : { returnSpacingMetres }) }) ** 2;
    }, 0));
  const apart = picked();
  const pair = picked(LOOP.pairMetres);
  const first = given(pulses.shared.harmonics.find(({ order }) => order === 2), 'the pulses’ first harmonic');
  const tenth = given(pulses.shared.harmonics.find(({ order }) => order === 20), 'a high harmonic of the pulses');

  const chain = quillonChain(shop.quillon20);
  const { regulator } = settledParts(shop.quillon20);
  const part = linearRegulator(regulator);
  const before = rectifyAt({ chain, corner: cornerOf(chain, { mains: 'nominal', load: 'everything', reservoir: 'marked' }), amps: chain.load.everythingAmps });
  const after = rippleBehindRegulator({
    inputVolts: before.waveform.railVolts,
    hertz: shop.quillon20.mains.hertz,
    setVolts: part.outputVolts,
    dropoutVolts: 2,
    rejectionAt120Hertz: given(part.rejectionDecibels, 'how well it rejects ripple').min,
  });

  const coilVolts = shop.quillon20.rail.volts;
  const edge = (riseSeconds: number, stepVolts = coilVolts): number => edgePeakVolts({ farads: EDGE.strayFarads, stepVolts, riseSeconds, gridOhms: EDGE.gridOhms });
  const module = converter('module-5w-12v');
  const residue = converterResidue({ rippleVolts: module.rippleVolts, hertz: module.switchingHertz, sections: [FILTER] });
  const lamp = ledRow('red');
  const onHeaters = ledOnAc({ forwardVolts: lamp.forwardVolts.typical, rmsVolts: HEATER_VOLTS, ohms: LAMP_OHMS });
  const lampAmps = given(plan.loads.flatMap((item) => (item.kind === 'indicator' ? [item.amps] : []))[0], 'panel lamps on the Tarn 45');
  const otherOhms = wireOhms({ row: wire(OTHER.wire), metres: OTHER.metres });

  const figures = {
    dc: figure(pulses.corner.rectifier.load.meanAmps, 'A', 2),
    pulsePeak: solved(pulses.peakAmps, 'A', 2),
    metres: figure(SHARED.metres, 'm'),
    wireOhms: figure(pulses.shared.ohms, 'Ω', 2),
    wireHenries: figure(straightWireHenries({ metres: SHARED.metres, squareMetres: row.squareMetres }), 'H', 2),
    pulseVolts: solved(pulses.movingPeakVolts, 'V', 2),
    jointOhms: figure(SHARED.jointOhms, 'Ω'),
    jointVolts: solved(withJoint, 'V', 2),
    steadyVolts: solved(steady.shared.meanVolts, 'V', 2),
    signal: figure(SIGNAL_VOLTS, 'V'),
    firstHertz: figure(first.hertz, 'Hz'),
    firstVolts: solved(first.rms, 'V', 2),
    highHertz: figure(tenth.hertz, 'Hz'),
    highVolts: solved(tenth.rms, 'V', 2),
    mainsHertz: figure(plan.mains.hertz, 'Hz'),
    loopLength: figure(LOOP.metres, 'm'),
    loopWidth: figure(LOOP.widthMetres, 'm'),
    apart: solved(apart, 'V', 2),
    pair: solved(pair, 'V', 2),
    pairTimes: solved(apart / pair, '', 2),
    rippleBefore: solved(before.rail.rippleVolts, 'V', 2),
    rippleAfter: solved(after.peakToPeakVolts, 'V', 2),
    rejection: figure(given(part.rejectionDecibels, 'rejection').min, ''),
    leakAmps: figure(LEAK.amps, 'A'),
    leakOhms: figure(LEAK.ohms, 'Ω'),
    leakFarads: figure(LEAK.bypassFarads, 'F'),
    leakBare: solved(heaterLeakageVolts({ leakageAmps: LEAK.amps, cathodeOhms: LEAK.ohms, hertz: plan.mains.hertz }), 'V', 2),
    leakBypassed: solved(heaterLeakageVolts({ leakageAmps: LEAK.amps, cathodeOhms: LEAK.ohms, hertz: plan.mains.hertz, bypassFarads: LEAK.bypassFarads }), 'V', 2),
    stray: figure(EDGE.strayFarads, 'F'),
    grid: figure(EDGE.gridOhms, 'Ω'),
    coilVolts: figure(coilVolts, 'V'),
    fast: figure(EDGE.fastSeconds, 's'),
    slow: figure(EDGE.slowSeconds, 's'),
    fastEdge: solved(edge(EDGE.fastSeconds), 'V', 2),
    slowEdge: solved(edge(EDGE.slowSeconds), 'V', 2),
    kick: figure(KICK_VOLTS, 'V'),
    kickEdge: solved(edge(EDGE.fastSeconds, KICK_VOLTS), 'V', 2),
    residueBefore: figure(module.rippleVolts, 'V'),
    residueHertz: figure(module.switchingHertz, 'Hz'),
    residueAfter: solved(residue.railVolts, 'V', 2),
    filterHenries: figure(FILTER.henries, 'H'),
    filterFarads: figure(FILTER.farads, 'F'),
    mostFarads: figure(module.maxLoadFarads, 'F'),
    heaterVolts: figure(HEATER_VOLTS, 'V'),
    lit: solved(onHeaters.litShare, '%', 2),
    lampAmps: figure(lampAmps, 'A'),
    lampTick: solved(lampAmps * pulses.shared.ohms, 'V', 2),
    lampTickJoint: solved(lampAmps * (pulses.shared.ohms + SHARED.jointOhms), 'V', 2),
    otherMetres: figure(OTHER.metres, 'm'),
    otherPerMetre: figure(wire(OTHER.wire).ohmsPerMetre, 'Ω'),
    otherAmps: figure(OTHER.peakAmps, 'A'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;
  const seen = (value: Figure): string => `${value.text} at the peak`;

  return {
    ...worked({
      figures,
      names: { wireName: row.name, regulatorName: part.name, otherWire: wire(OTHER.wire).name, pulseDown: decibels(SIGNAL_VOLTS / pulses.movingPeakVolts), jointDown: decibels(SIGNAL_VOLTS / withJoint) },
      asked: ['pulseVolts', 'metres', 'fastEdge', 'otherMetres', 'otherPerMetre', 'otherAmps', 'otherWire', 'kick', 'kickEdge', 'slowEdge', 'slow', 'firstHertz', 'mainsHertz', 'residueHertz', 'steadyVolts', 'mostFarads'],
      answers: { 'pulse-of-another': otherOhms * OTHER.peakAmps },
      // The wire's calculator asks for no voltage rating of the reservoir.
      opened: { ...Object.fromEntries(Object.entries(tarnCase(plan, rail)).filter(([field]) => field !== 'ratedVolts')), wire: SHARED.wire, sharedMetres: SHARED.metres, wiring: 'shared', fuseAmps: given(rail.part('secondary-fuse').numbers[0]?.value, 'the winding’s fuse') },
      steps: [
        { ask: 'What flows in the shared piece?', words: 'The charging pulses, not the load’s DC: the wire lies between rectifier and reservoir.', sum: `${text('pulsePeak')} at the peak, for ${text('dc')} of DC` },
        { ask: 'What does it drop?', words: 'Ohms of that length times the peak, less the steady part. The sides of the pulses are steep, so the wire’s inductance adds a little.', sum: `${text('wireOhms')} and ${text('wireHenries')}: ${text('pulseVolts')}` },
        { ask: 'How far is that below the guitar?', words: 'In decibels, twenty times the logarithm of the ratio.', sum: `${text('signal')} over ${text('pulseVolts')}: ${decibels(SIGNAL_VOLTS / pulses.movingPeakVolts)}` },
        { ask: 'And with one poor joint in it?', words: `Add ${text('jointOhms')} (supposed).`, sum: `${text('jointVolts')}, ${decibels(SIGNAL_VOLTS / withJoint)} below` },
        { ask: 'What is left when the wire is moved?', words: 'Reservoir to rectifier directly, then one wire from the reservoir’s minus to the star. That wire carries the load’s DC.', sum: `${text('steadyVolts')}, and it stands still` },
      ],
    }),
    ways: {
      along: { id: 'pulses-along', way: 'along', pulseText: text('pulsePeak'), stageText: seen(figures.pulseVolts) },
      apart: { id: 'pulses-apart', way: 'apart', pulseText: text('pulsePeak'), stageText: `${text('steadyVolts')}, steady` },
    },
  };
}


