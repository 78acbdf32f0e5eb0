import type { Source } from '../findings.ts';
import { REFILLS_PER_CYCLE } from './chain-parts.ts';
import type { ChainInput, SolvedCorner, WorstCorners } from './chain-types.ts';
import { junctionToAirKelvinPerWatt } from './regulator-stage.ts';
import { windingSource } from './winding-source.ts';
import { workingStep } from './working.ts';
import type { WorkingStep } from './working.ts';

const SOLVED: Source = { id: 'solved' };

function heatersStep({ winding }: ChainInput, at: SolvedCorner): WorkingStep[] {
  if (winding.acrossOhms === undefined) return [];
  const source = windingSource(winding, at.corner);
  return [
    workingStep({
      name: 'winding-with-heaters',
      words: 'What the valve heaters across it leave of that, before the rectifier draws anything.',
      formula: 'L = U × H / (H + W)',
      numbers: [
        { symbol: 'U', value: source.ownVolts, unit: 'V' },
        { symbol: 'H', value: winding.acrossOhms, unit: 'Ω' },
        { symbol: 'W', value: source.ownOhms, unit: 'Ω' },
      ],
      result: { symbol: 'L', value: source.openCircuitVolts, unit: 'V' },
      source: SOLVED,
    }),
  ];
}

function peakSteps(input: ChainInput, at: SolvedCorner): WorkingStep[] {
  const { winding, mains } = input;
  const volts = winding.openCircuitVolts * at.corner.mainsRatio;
  const loaded = windingSource(winding, at.corner).openCircuitVolts;
  const mainsVolts = mains.nominalVolts * at.corner.mainsRatio;
  const symbol = winding.acrossOhms === undefined ? 'U' : 'L';
  return [
    workingStep({
      name: 'winding-at-the-corner',
      words: `Volts of the unloaded winding at ${at.corner.mains} mains.`,
      formula: 'U = E × M / N',
      numbers: [
        { symbol: 'E', value: winding.openCircuitVolts, unit: 'V' },
        { symbol: 'M', value: mainsVolts, unit: 'V' },
        { symbol: 'N', value: mains.nominalVolts, unit: 'V' },
      ],
      result: { symbol: 'U', value: volts, unit: 'V' },
      source: { id: 'arithmetic' },
    }),
    ...heatersStep(input, at),
    workingStep({
      name: 'winding-peak',
      words: 'Its peak, with the mains wave as flat-topped as this corner takes it.',
      formula: `P = ${symbol} × k`,
      numbers: [
        { symbol, value: loaded, unit: 'V' },
        { symbol: 'k', value: at.corner.crestFactor, unit: '' },
      ],
      result: { symbol: 'P', value: at.windingPeakVolts, unit: 'V' },
      source: { id: 'mains-crest-practice' },
    }),
  ];
}

function valleySteps(input: ChainInput, at: SolvedCorner): WorkingStep[] {
  const farads = input.reservoir.farads * at.corner.faradsRatio;
  const amps = at.rectifier.load.meanAmps;
  const refills = REFILLS_PER_CYCLE[input.topology];
  return [
    workingStep({
      name: 'ripple-by-rule',
      words: 'The rule of thumb for the ripple, which takes the reservoir to feed the load all the time. It reads high.',
      formula: refills === 2 ? 'r = I / (2 × f × C)' : 'r = I / (f × C)',
      numbers: [
        { symbol: 'I', value: amps, unit: 'A' },
        { symbol: 'f', value: at.corner.hertz, unit: 'Hz' },
        { symbol: 'C', value: farads, unit: 'F' },
      ],
      result: { symbol: 'r', value: amps / (refills * at.corner.hertz * farads), unit: 'V' },
      source: { id: 'ripple-rule' },
    }),
    workingStep({
      name: 'ripple-solved',
      words: 'The ripple out of the solved circuit, peak to peak.',
      formula: 'Winding, diodes, reservoir and load solved over one mains cycle',
      numbers: [],
      result: { symbol: 'r', value: at.rectifier.rail.rippleVolts, unit: 'V' },
      source: SOLVED,
    }),
    workingStep({
      name: 'valley',
      words: `The valley of the ripple at ${at.corner.words}.`,
      formula: 'Lowest point of the solved waveform',
      numbers: [],
      result: { symbol: 'V', value: at.rectifier.rail.minVolts, unit: 'V' },
      source: SOLVED,
    }),
  ];
}

function headroomSteps({ stage }: ChainInput, at: SolvedCorner): WorkingStep[] {
  if (stage.kind === 'none') return [];
  const dropout = at.neededVolts - stage.outputVolts * (1 + stage.outputToleranceRatio);
  return [
    workingStep({
      name: 'input-needed',
      words: 'What the regulator needs: the highest output it may have, and its worst dropout above that.',
      formula: 'N = O × (1 + t) + D',
      numbers: [
        { symbol: 'O', value: stage.outputVolts, unit: 'V' },
        { symbol: 't', value: stage.outputToleranceRatio, unit: '' },
        { symbol: 'D', value: dropout, unit: 'V' },
      ],
      result: { symbol: 'N', value: at.neededVolts, unit: 'V' },
      source: { id: 'regulator-data' },
    }),
    workingStep({
      name: 'headroom',
      words: 'What is left between the valley and that.',
      formula: 'h = V − N',
      numbers: [
        { symbol: 'V', value: at.rectifier.rail.minVolts, unit: 'V' },
        { symbol: 'N', value: at.neededVolts, unit: 'V' },
      ],
      result: { symbol: 'h', value: at.rectifier.rail.minVolts - at.neededVolts, unit: 'V' },
      source: SOLVED,
    }),
  ];
}

function heatSteps({ stage, cooling }: ChainInput, at: SolvedCorner): WorkingStep[] {
  if (stage.kind === 'none' || at.junctionCelsius === undefined) return [];
  const input = at.rectifier.rail.meanVolts;
  const heat =
    stage.kind === 'buck' ?
      {
        formula: 'P = L × I + V × q',
        numbers: [
          { symbol: 'L', value: stage.lossVolts, unit: 'V' },
          { symbol: 'I', value: at.loadAmps, unit: 'A' },
          { symbol: 'V', value: input, unit: 'V' },
          { symbol: 'q', value: stage.quiescentAmps, unit: 'A' },
        ] as const,
      }
    : {
        formula: 'P = (V − O) × I + V × q',
        numbers: [
          { symbol: 'V', value: input, unit: 'V' },
          { symbol: 'O', value: stage.outputVolts * (1 - stage.outputToleranceRatio), unit: 'V' },
          { symbol: 'I', value: at.loadAmps, unit: 'A' },
          { symbol: 'q', value: stage.quiescentAmps, unit: 'A' },
        ] as const,
      };
  return [
    workingStep({
      name: 'regulator-heat',
      words: `Heat in the regulator at ${at.corner.words}${stage.kind === 'buck' ? '' : ', from the mean input and the lowest output'}.`,
      ...heat,
      result: { symbol: 'P', value: at.regulatorWatts, unit: 'W' },
      source: SOLVED,
    }),
    workingStep({
      name: 'junction',
      words: 'Its junction above the air inside the chassis.',
      formula: 'T = A + P × R',
      numbers: [
        { symbol: 'A', value: cooling.airCelsius, unit: '°C' },
        { symbol: 'P', value: at.regulatorWatts, unit: 'W' },
        { symbol: 'R', value: junctionToAirKelvinPerWatt(stage, cooling), unit: 'K/W' },
      ],
      result: { symbol: 'T', value: at.junctionCelsius, unit: '°C' },
      source: { id: 'regulator-data' },
    }),
  ];
}

function stressSteps(worst: WorstCorners): WorkingStep[] {
  const { windingCurrent, rippleCurrent, peak } = worst;
  const steps = [
    workingStep({
      name: 'winding-current',
      words: `RMS current in the winding at ${windingCurrent.corner.words}: heat in its copper follows this, not the DC amps.`,
      formula: 'Root of the mean square of the solved winding current',
      numbers: [],
      result: { symbol: 'Iw', value: windingCurrent.windingRmsAmps, unit: 'A' },
      source: SOLVED,
    }),
    workingStep({
      name: 'reservoir-current',
      words: `Ripple current in the reservoir at ${rippleCurrent.corner.words}.`,
      formula: 'Root of the mean square of the solved reservoir current',
      numbers: [],
      result: { symbol: 'Ic', value: rippleCurrent.rectifier.reservoir.rmsAmps, unit: 'A' },
      source: SOLVED,
    }),
    workingStep({
      name: 'highest-reservoir-volts',
      words: `Highest volts on the reservoir, at ${peak.corner.words}.`,
      formula: 'Highest point of the solved waveform',
      numbers: [],
      result: { symbol: 'Vp', value: peak.rectifier.rail.maxVolts, unit: 'V' },
      source: SOLVED,
    }),
  ];
  const { meanAmps } = windingCurrent.rectifier.load;
  // With heaters on the same winding its current is not the rail's alone, and the ratio would say nothing.
  if (meanAmps > 0 && windingCurrent.across === undefined) {
    const { rmsAmps } = windingCurrent.rectifier.winding;
    steps.splice(
      1,
      0,
      workingStep({
        name: 'winding-over-dc',
        words: 'How many times the DC current that is.',
        formula: 'F = Iw / Idc',
        numbers: [
          { symbol: 'Iw', value: rmsAmps, unit: 'A' },
          { symbol: 'Idc', value: meanAmps, unit: 'A' },
        ],
        result: { symbol: 'F', value: rmsAmps / meanAmps, unit: '' },
        source: { id: 'arithmetic' },
      }),
    );
  }
  return steps;
}

/** The working of a chain, in the order a technician would go through it. Empty steps are left out with the regulator. */
export function chainWorking(input: ChainInput, worst: WorstCorners): readonly WorkingStep[] {
  return [
    ...peakSteps(input, worst.valley),
    ...valleySteps(input, worst.valley),
    ...headroomSteps(input, worst.valley),
    ...heatSteps(input, worst.heat),
    ...stressSteps(worst),
  ];
}
