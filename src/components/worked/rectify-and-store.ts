import { nextRatedVolts, solveRectifier, type RectifierTopology } from '../../compute/index.ts';
import type { RectifierSheetProps } from '../../drawings/rectifier-sheet.tsx';
import { cycleOf, type Cycle } from '../../widgets/shared/cycle.ts';
import { given, type Shop } from '../shop.ts';
import { cornerOf, quillonChain, rectifyAt, settledParts, supplyCase } from './small-transformer.ts';
import { listLoad } from './the-load-list.ts';
import { figure, solved as result, worked, type Worked } from './worked.ts';

/** Winding RMS over the load's DC on an ideal supply whose source resistance is this part of the load's. */
function ratioAt(topology: RectifierTopology, sourceShare: number): number {
  const ohms = 100;
  const solved = solveRectifier({
    topology,
    winding: { openCircuitVolts: 100, ohms: ohms * sourceShare },
    hertz: 60,
    diode: { saturationAmps: 1e-9, emission: 0.1, ohms: 0 },
    // ωCR of 50: past it the ratio hardly moves.
    reservoir: { farads: 50 / (2 * Math.PI * 60 * ohms), ohms: 0 },
    load: { ohms },
  });
  return solved.winding.rmsAmps / solved.load.meanAmps;
}

interface BareWinding {
  readonly openCircuitVolts: number;
  readonly ohms: number;
}

/** Softest and stiffest supply that a technician is likely to meet: source resistance over load resistance. */
const SOFT = 0.2;
const STIFF = 0.001;

/** Everything that lesson 7 says of the Quillon 20's small transformer, solved. */
export function work(shop: Shop): Worked<string> & {
  readonly cycle: Cycle;
  readonly sheet: Pick<RectifierSheetProps, 'windingText' | 'reservoirText' | 'loadText'>;
} {
  const job = shop.quillon20;
  const chain = quillonChain(job);
  const { transformer } = settledParts(job);
  const heater = given(job.amp.heater, 'a heater winding');
  const ratedAmps = given(chain.winding.ratedAmps, 'the rating of its winding');
  const oneCoil = listLoad(job).lines[0]?.each.typical ?? Number.NaN;
  const dc = chain.load.everythingAmps;
  const nominal = cornerOf(chain, { mains: 'nominal', load: 'everything', reservoir: 'marked' });
  const low = cornerOf(chain, { mains: 'low', load: 'everything', reservoir: 'marked' });
  const highOff = cornerOf(chain, { mains: 'high', load: 'off', reservoir: 'largest' });

  const solved = rectifyAt({ chain, corner: nominal, amps: dc });
  const ratio = solved.winding.rmsAmps / dc;
  const ratioOf = (topology: RectifierTopology, winding?: BareWinding): number =>
    rectifyAt({ chain, corner: nominal, amps: dc, topology, ...(winding && { winding }) }).winding.rmsAmps / dc;

  const rmsAt = (amps: number): number => rectifyAt({ chain, corner: nominal, amps }).winding.rmsAmps;
  const dcAllowed = largestBelow((amps) => rmsAt(amps) <= ratedAmps, ratedAmps);
  const overRms = rmsAt(ratedAmps);

  const crestLoss = (winding?: BareWinding): number => {
    const at = (crestFactor: number): number =>
      rectifyAt({ chain, corner: nominal, amps: dc, crestFactor, ...(winding && { winding }) }).rail.meanVolts;
    return at(Math.SQRT2) - at(low.crestFactor);
  };

  const stiff = rectifyAt({ chain, corner: nominal, amps: dc, winding: heater });
  const at50 = rectifyAt({ chain, corner: { ...nominal, hertz: 50 }, amps: dc });
  const ripple = solved.rail.rippleVolts;
  const ruleRipple = dc / (2 * nominal.hertz * chain.reservoir.farads);
  const unloaded = rectifyAt({ chain, corner: highOff, amps: 0 });
  const crestHigh = chain.winding.openCircuitVolts * highOff.mainsRatio * highOff.crestFactor;
  const idle = rectifyAt({ chain, corner: nominal, amps: 0 });
  const high = rectifyAt({ chain, corner: cornerOf(chain, { mains: 'high', load: 'everything', reservoir: 'largest' }), amps: dc });
  const halfWave = rectifyAt({ chain, corner: highOff, amps: 0, topology: 'half-wave' });
  const doubledFarads = rectifyAt({ chain, corner: nominal, amps: dc, farads: 2 * chain.reservoir.farads });
  const largerLoad = dc + oneCoil;
  const goodRating = nextRatedVolts({ volts: unloaded.rail.maxVolts }) ?? Number.NaN;
  const badRating = 25;

  const figures = {
    rail: figure(job.rail.volts, 'V'),
    dc: figure(dc, 'A'),
    ratedVolts: figure(transformer.secondaryVolts, 'V'),
    ratedAmps: figure(ratedAmps, 'A'),
    voltAmps: figure(transformer.voltAmps, 'VA'),
    mains: figure(job.mains.nominalVolts, 'V'),
    reservoir: figure(chain.reservoir.farads, 'F'),
    conduction: result(solved.diode.conductionDegrees, '', 2),
    halfTurn: figure(180, ''),
    conductionShare: result(solved.diode.conductionDegrees / 180, '%', 2),
    peak: result(solved.winding.peakAmps, 'A', 2),
    windingRms: result(solved.winding.rmsAmps, 'A'),
    ratio: result(ratio, '', 2),
    bridgeSoft: result(ratio, '', 2),
    bridgeStiff: result(ratioOf('bridge', heater), '', 2),
    tapSoft: result(ratioOf('centre-tap'), '', 2),
    tapStiff: result(ratioOf('centre-tap', heater), '', 2),
    halfSoft: result(ratioOf('half-wave'), '', 2),
    halfStiff: result(ratioOf('half-wave', heater), '', 2),
    doublerSoft: result(ratioOf('doubler'), '', 2),
    doublerStiff: result(ratioOf('doubler', heater), '', 2),
    bridgeLow: result(ratioAt('bridge', SOFT), '', 2),
    bridgeHigh: result(ratioAt('bridge', STIFF), '', 2),
    doublerHigh: result(ratioAt('doubler', STIFF), '', 2),
    dcAllowed: result(dcAllowed, 'A', 2),
    overRms: result(overRms, 'A', 2),
    overHeat: result((overRms / ratedAmps) ** 2, '', 2),
    mean: result(solved.rail.meanVolts, 'V'),
    valley: result(solved.rail.minVolts, 'V'),
    noLoadHigh: result(unloaded.rail.maxVolts, 'V'),
    naiveVolts: result(transformer.secondaryVolts * Math.SQRT2, 'V'),
    idleVolts: result(idle.rail.meanVolts, 'V'),
    highRms: result(high.winding.rmsAmps, 'A'),
    stiffMean: result(stiff.rail.meanVolts, 'V'),
    flatCrest: figure(low.crestFactor, ''),
    flatStiff: result(crestLoss(heater), 'V', 2),
    flatSoft: result(crestLoss(), 'V', 2),
    ruleRipple: result(ruleRipple, 'V', 2),
    solvedRipple: result(ripple, 'V', 2),
    ruleStiff: result(ruleRipple / stiff.rail.rippleVolts - 1, '%', 2),
    ripple50: result(at50.rail.rippleVolts / ripple - 1, '%', 2),
    ruleError: result(ruleRipple / ripple - 1, '%', 2),
    biggerReservoirRms: figure(Math.abs(doubledFarads.winding.rmsAmps / solved.winding.rmsAmps - 1), '%', 1),
    reverse: result(unloaded.diode.reverseVolts, 'V'),
    diodeReverse: figure(chain.diode.ratedReverseVolts, 'V'),
    largerLoad: result(largerLoad, 'A'),
    crestHigh: result(crestHigh, 'V'),
    goodRating: figure(goodRating, 'V'),
    badRating: figure(badRating, 'V'),
  };
  const text = (name: keyof typeof figures): string => figures[name].text;
  const { winding } = chain;

  return {
    ...worked({
      figures,
      names: { diodeName: chain.diode.name },
      asked: ['largerLoad', 'ratedAmps', 'dcAllowed', 'overRms', 'overHeat', 'mean', 'goodRating', 'badRating', 'noLoadHigh', 'ruleRipple', 'solvedRipple', 'crestHigh'],
      answers: { 'winding-rms': rmsAt(largerLoad), 'half-wave-reverse': halfWave.diode.reverseVolts },
      opened: supplyCase(job, dc),
      steps: [
        {
          ask: 'What does the winding give with nothing on it?',
          words: 'Its label holds at rated current only. A transformer of this size gives that much more when it idles.',
          sum: `${text('ratedVolts')} × ${figure(1 + transformer.regulationRatio, '').text} = ${figure(winding.openCircuitVolts, 'V').text}`,
        },
        {
          ask: 'How soft is it?',
          words: 'The volts lost between idle and rated current, over that current. The primary is in it as well.',
          sum: `(${figure(winding.openCircuitVolts, 'V').text} − ${text('ratedVolts')}) / ${text('ratedAmps')} = ${figure(winding.ohms, 'Ω').text}`,
        },
        {
          ask: 'What does the rail do under load?',
          words: 'Now the circuit is solved: the wave with its flat top, the winding, two diodes, the reservoir and the load, once round the cycle until it repeats.',
          sum: `mean ${text('mean')}, valley ${text('valley')}, ripple ${text('solvedRipple')} peak to peak`,
        },
        {
          ask: 'What does the winding carry?',
          words: 'From the same solution: the square of the winding’s current, averaged over the cycle, and its root.',
          sum: `${text('windingRms')} = ${text('ratio')} × ${text('dc')}`,
        },
        {
          ask: 'Is the winding within its rating?',
          words: 'RMS against RMS, here and on strong mains.',
          sum: `${text('windingRms')} and ${text('highRms')}, against ${text('ratedAmps')}`,
        },
        {
          ask: 'Which capacitor and which diodes?',
          words: 'Unplug the load, raise the mains to its highest, and nothing is lost in the copper. A fifth in hand on the capacitor, twice on the diodes.',
          sum: `${text('noLoadHigh')}: capacitor ${text('goodRating')}, diodes ${text('diodeReverse')}`,
        },
      ],
    }),
    cycle: cycleOf(chain.topology, solved.waveform),
    sheet: { windingText: `${text('ratedVolts')} AC`, reservoirText: text('reservoir'), loadText: text('dc') },
  };
}

/** Largest amount up to `most` for which `holds` is true, by halving; `holds` must turn false once and stay so. */
function largestBelow(holds: (amount: number) => boolean, most: number): number {
  let low = 0;
  let high = most;
  for (let step = 0; step < 30; step++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
