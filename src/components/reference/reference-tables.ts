import { coilTable, heaterTable, indicatorTable, optocouplerTable } from './load-tables.ts';
import type { ReferenceTable } from './reference-table.ts';
import {
  converterTable, diodeTable, esrTable, fuseTable, mainsTable, meltingTable, preferredTable, regulatorTable, wireTable,
} from './supply-tables.ts';

/** The tables of the look-up page, in the order of the job. */
export const REFERENCE_TABLES: readonly ReferenceTable[] = [
  heaterTable, coilTable, indicatorTable, optocouplerTable, mainsTable, diodeTable, esrTable, regulatorTable, converterTable, fuseTable, meltingTable, wireTable,
  preferredTable,
];
