import type { Basis, Finding, FindingNumber, Level } from '../findings.ts';
import type { Approach } from '../plan/plan-types.ts';
import type { ChainInput, ChainSolution } from './chain-types.ts';
import type { ConverterSolution } from './converter-types.ts';
import type { VolumeClass } from './part-volumes.ts';

/** What a part is there for. */
export type PartRole =
  | 'transformer'
  | 'converter'
  | 'rectifier'
  | 'reservoir'
  | 'regulator'
  | 'heatsink'
  | 'regulator-capacitor'
  | 'setting-resistor'
  | 'protection-diode'
  | 'filter'
  | 'clamp'
  | 'primary-fuse'
  | 'secondary-fuse';

/** A part of a supply, chosen by the reader or sized here. */
export interface SizedPart {
  readonly role: PartRole;
  /** As a parts list names it. */
  readonly name: string;
  readonly count: number;
  readonly chosenBy: 'plan' | 'sized';
  /** Why this one. */
  readonly why: string;
  readonly numbers: readonly FindingNumber[];
  readonly basis: Basis;
  /** Box around all of them, for the room they need. */
  readonly cubicMetres: number;
}

/** Does the rail hold at its worst corner? */
export interface HoldsMeasure {
  readonly level: Level;
  /** Volts between the valley (or the lowest rail) and what is needed there; undefined when it could not be solved. */
  readonly marginVolts: number | undefined;
  readonly corner: string;
  readonly words: string;
}

/** Heat that the supply adds inside the chassis, and its hottest part. */
export interface HeatMeasure {
  readonly level: Level;
  /** Without the load's own heat: winding, diodes, reservoir, regulator, module. */
  readonly addedWatts: number | undefined;
  readonly hottest: { readonly part: string; readonly celsius: number } | undefined;
  readonly corner: string;
  readonly words: string;
}

/** Winding or module, loaded against its rating. */
export interface LoadingMeasure {
  readonly level: Level;
  readonly of: 'winding' | 'converter';
  /** Amps over rated amps; undefined when no rating is known. */
  readonly ratio: number | undefined;
  readonly words: string;
}

export interface RoomMeasure {
  readonly level: Level;
  readonly partCount: number;
  readonly cubicMetres: number;
  readonly volumeClass: VolumeClass;
  /** Share of the free room; Infinity without room. */
  readonly share: number;
  readonly words: string;
}

/** What must be touched on the mains side. */
export interface MainsSideMeasure {
  readonly level: Level;
  readonly touched: boolean;
  readonly words: string;
}

export interface GroundMeasure {
  readonly level: Level;
  readonly words: string;
}

/** The same measures for every approach, so that four can stand side by side. */
export interface SupplyMeasures {
  readonly holds: HoldsMeasure;
  readonly heat: HeatMeasure;
  readonly loading: LoadingMeasure;
  readonly room: RoomMeasure;
  readonly mainsSide: MainsSideMeasure;
  readonly ground: GroundMeasure;
}

/** One approach to a plan's rail, sized, solved at every corner and judged. */
export interface Supply {
  readonly approach: Approach;
  /** False when the amp lacks what this approach needs (no such winding); then nothing is sized or solved. */
  readonly available: boolean;
  readonly parts: readonly SizedPart[];
  /** What was solved, for a drawing or a calculator to open on; undefined for a converter that feeds the rail itself. */
  readonly chainInput?: ChainInput;
  readonly chain?: ChainSolution;
  readonly converter?: ConverterSolution;
  /** Most serious first. */
  readonly findings: readonly Finding[];
  readonly level: Level;
  /** The corner of the most serious finding that names one. */
  readonly worstCorner: string | undefined;
  readonly measures: SupplyMeasures;
}
