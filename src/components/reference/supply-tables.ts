import {
  CONVERTERS, DIODES, FUSE_STANDARDS, IEC_FUSE_AMPS, LINEAR_REGULATORS, MAINS_REGIONS, WIRES, diodeForwardVolts, esrLimitOhms, formatQuantity,
  preferredValues,
} from '../../compute/index.ts';
import { MELTING_A2S } from '../../compute/parts/fuse-rows.ts';
import type { ReferenceTable } from './reference-table.ts';

const amps = (value: number): string => formatQuantity({ value, unit: 'A' });
const volts = (value: number): string => formatQuantity({ value, unit: 'V' });
const seconds = (value: number): string => formatQuantity({ value, unit: 's' });

export const mainsTable: ReferenceTable = {
  id: 'mains',
  title: 'Mains by region',
  note: 'What the supplier undertakes, and what to design for: at least a tenth either way.',
  columns: ['Region', 'Nominal', 'Supplied', 'Design for'],
  rows: MAINS_REGIONS.map((row) => ({
    cells: [
      row.name,
      `${volts(row.nominalVolts)} ${row.hertz} Hz`,
      `${row.supplied.minVolts} to ${row.supplied.maxVolts} V`,
      `${row.lowVolts} to ${row.highVolts} V`,
    ],
    sourceId: row.source.id,
    basis: row.basis,
  })),
};

const DROP_AMPS = [0.1, 1, 3] as const;

export const diodeTable: ReferenceTable = {
  id: 'diodes',
  title: 'Rectifier diodes',
  note: 'Forward drop by the typical curve, give or take 50 mV. The charging pulse, several times the DC current, decides the drop.',
  columns: ['Family', ...DROP_AMPS.map((at) => `Drop at ${at} A`), 'Mean, with a reservoir', 'Surge, one half-sine', 'Reverse'],
  rows: DIODES.map((row) => ({
    cells: [
      row.name,
      ...DROP_AMPS.map((at) => (at > row.typical.fittedToAmps ? 'not fitted' : volts(Number(diodeForwardVolts({ model: row.typical, amps: at }).toFixed(2))))),
      amps(row.averageAmps * row.capacitiveLoadFactor),
      amps(row.surgeAmps),
      `${row.types[0]?.reverseVolts} to ${row.types.at(-1)?.reverseVolts} V`,
    ],
    sourceId: row.source.id,
    basis: row.typical.basis,
  })),
};

export const regulatorTable: ReferenceTable = {
  id: 'regulators',
  title: 'Linear regulators',
  note: 'Plan with the larger dropout, at the valley, at low mains. A fixed regulator’s tab is ground, an adjustable one’s is its output.',
  columns: ['Part', 'Dropout at full load, typical', 'Plan with', 'Input, at most', 'Own current, at most', 'Tab'],
  rows: LINEAR_REGULATORS.map((row) => ({
    cells: [
      row.name,
      volts(row.typicalDropout.at(-1)?.[1] ?? Number.NaN),
      volts(row.plannedDropout.points.at(-1)?.[1] ?? Number.NaN),
      row.family === 'adjustable' ? `${volts(row.maxInputVolts)} across it` : volts(row.maxInputVolts),
      amps(row.quiescentAmps.max),
      row.tab,
    ],
    sourceId: row.source.id,
    basis: row.plannedDropout.basis,
  })),
};

export const converterTable: ReferenceTable = {
  id: 'converters',
  title: 'Mains converters',
  note: 'By class of module. Derate in a hot chassis. The leakage comes out of a floating output until it is bonded.',
  columns: ['Module', 'Output', 'Ripple', 'Leakage at 230 V', 'Starts into, at most'],
  rows: CONVERTERS.map((row) => ({
    cells: [
      row.name,
      `${volts(row.outputVolts)} ${amps(row.ratedAmps)}`,
      volts(row.rippleVolts),
      amps(row.leakageAmps),
      formatQuantity({ value: row.maxLoadFarads, unit: 'F' }),
    ],
    sourceId: row.source.id,
    basis: row.basis,
  })),
};

export const fuseTable: ReferenceTable = {
  id: 'fuses',
  title: 'Fuses: when they open',
  note: `Rated currents of the IEC series: ${IEC_FUSE_AMPS.map((value) => amps(value)).join(', ')}. A fuse of one standard is not the same fuse as one of another with the same number on it.`,
  columns: ['Standard', 'Carries for ever', 'Times rated', 'Not before', 'By'],
  rows: FUSE_STANDARDS.flatMap((row) =>
    (row.gates.at(-1)?.points ?? []).map((gate) => ({
      cells: [
        row.name,
        formatQuantity({ value: row.continuousShare, unit: '%' }),
        `${gate.multiple} ×`,
        gate.minSeconds === undefined ? 'no limit' : seconds(gate.minSeconds),
        gate.maxSeconds === undefined ? 'need not open' : seconds(gate.maxSeconds),
      ],
      sourceId: row.source.id,
      basis: row.basis,
    })),
  ),
};

export const meltingTable: ReferenceTable = {
  id: 'melting',
  title: 'Fuses: melting integral',
  note: 'Time-lag, high breaking, ceramic. An inrush that comes at every switch-on may take about a third of it.',
  columns: ['Rated', 'Melting integral'],
  rows: MELTING_A2S.map(([rated, integral]) => ({ cells: [amps(rated), `${integral} A²s`], sourceId: 'ds-fuse-time-lag', basis: 'rated' as const })),
};

export const wireTable: ReferenceTable = {
  id: 'wire',
  title: 'Wire',
  note: 'Amps in open air are generous: halve them in a hot bundle.',
  columns: ['Wire', 'Section', 'Resistance, 20 °C', 'Open air', 'Cautious'],
  rows: WIRES.map((row) => ({
    cells: [
      row.name,
      formatQuantity({ value: row.squareMetres, unit: 'm²' }),
      `${formatQuantity({ value: row.ohmsPerMetre, unit: 'Ω' })}/m`,
      amps(row.openAirAmps),
      row.cautiousAmps === undefined ? 'not listed' : amps(row.cautiousAmps),
    ],
    sourceId: row.source.id,
    basis: row.basis,
  })),
};

const ESR_FARADS = [470e-6, 1000e-6, 2200e-6, 4700e-6, 10_000e-6] as const;
const ESR_VOLTS = [16, 25, 35, 50] as const;

export const esrTable: ReferenceTable = {
  id: 'esr',
  title: 'Electrolytics: largest ESR when new',
  note: 'From the largest tan δ of general-purpose parts at 120 Hz and 20 °C. New parts commonly measure a third to two thirds of it; at the end of life it may have doubled.',
  columns: ['Rated', ...ESR_FARADS.map((value) => formatQuantity({ value, unit: 'F' }))],
  rows: ESR_VOLTS.map((ratedVolts) => ({
    cells: [volts(ratedVolts), ...ESR_FARADS.map((farads) => formatQuantity({ value: esrLimitOhms({ farads, ratedVolts }), unit: 'Ω', digits: 2 }))],
    sourceId: 'ds-electrolytic-general',
    basis: 'rated' as const,
  })),
};

export const preferredTable: ReferenceTable = {
  id: 'preferred',
  title: 'Preferred values',
  note: 'One decade; every other is the same, ten times up or down.',
  columns: ['Series', 'Values'],
  rows: (['E3', 'E6', 'E12', 'E24'] as const).map((series) => ({
    cells: [series, preferredValues(series).map((value) => value.toPrecision(2)).join('  ')],
    sourceId: 'iec-60063',
    basis: 'rated' as const,
  })),
};
