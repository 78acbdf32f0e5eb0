import type { Basis } from '../findings.ts';
import type {
  Insulation,
  Jack,
  RailReference,
  RelayContacts,
  WindingKind,
  WindingReference,
} from '../grounding/connections.ts';
import type { LoadItem } from '../loads/load-types.ts';
import type { StartUpLimit } from '../parts/converter.ts';
import type { ShortCircuitMark } from '../parts/transformer.ts';
import type { Mains } from '../supplies/corners.ts';

/** Number of the plan's form. It rises when a field changes its meaning or place; `migratePlan` brings older ones up. */
export const PLAN_VERSION = 1;

/** The four ways to feed a rail. */
export type Approach = 'spare-winding' | 'converter' | 'separate-transformer' | 'heater-winding';

/** What stands between reservoir (or converter) and load. */
export type Regulation = 'none' | 'fixed' | 'low-dropout' | 'adjustable' | 'buck';

/** Valves that already hang on the heater winding, all in parallel across it. */
export interface PresentHeater {
  readonly name: string;
  /** Rated volts and amps of one, RMS, hot. */
  readonly volts: number;
  readonly amps: number;
  readonly count: number;
}

/** Insulation between a source of the rail and the mains, and between it and the high voltage. */
export interface Barriers {
  readonly fromMains: Insulation;
  readonly fromHighTension: Insulation;
}

/** A winding of the amp's own transformer, as surveyed. RMS, at nominal mains; the whole winding when it has a tap. */
export interface PlanWinding {
  readonly openCircuitVolts: number;
  /** Source resistance seen from it, primary included. */
  readonly ohms: number;
  readonly ohmsMeasuredCold?: boolean;
  /** RMS current it may carry; left out when nobody knows. */
  readonly ratedAmps?: number;
  readonly basis: Basis;
  /** What ties it to the chassis now. */
  readonly reference: WindingReference;
  readonly insulation: Barriers;
}

export interface HeaterWinding extends PlanWinding {
  readonly heaters: readonly PresentHeater[];
}

export interface SpareWinding extends PlanWinding {
  readonly kind: WindingKind;
  /** A tap in its middle, free to be used. */
  readonly centreTapped: boolean;
}

/** Free room for what is added, metres. */
export interface Room {
  readonly lengthMetres: number;
  readonly widthMetres: number;
  readonly heightMetres: number;
}

/** The amp as surveyed. */
export interface PlanAmp {
  readonly protectiveEarth: 'verified' | 'absent' | 'not-checked';
  /** B+ above chassis with no load; left out when unknown. */
  readonly highTensionVolts?: number;
  readonly transformer: {
    /** VA of the whole mains transformer; left out when unknown. */
    readonly ratedVoltAmps?: number;
    /** VA that everything already fed by it draws; left out when unknown. */
    readonly presentVoltAmps?: number;
  };
  readonly heater?: HeaterWinding;
  readonly spare?: SpareWinding;
  readonly room: Room;
  /** Hottest air where the parts would sit. */
  readonly airCelsius: number;
}

/** The rail asked for. */
export interface PlanRail {
  readonly volts: number;
  readonly regulation: Regulation;
  /** How far the loads let the rail stray, each way, over `volts`; 0.1 when left out. */
  readonly toleranceRatio?: number;
}

/** A transformer to buy: one or two equal secondaries. */
export interface PlanTransformer {
  /** Rated RMS volts of one secondary at rated load. */
  readonly secondaryVolts: number;
  readonly secondaries: 'one' | 'two-in-series' | 'two-in-parallel' | 'two-as-centre-tap';
  readonly voltAmps: number;
  /** (No-load volts − rated volts) over rated volts. */
  readonly regulationRatio: number;
  /** What its marking says; read on the part, never inferred from its size. */
  readonly shortCircuitMark: ShortCircuitMark;
  /** As somebody vouches for it; nobody when left out. */
  readonly insulation?: Barriers;
  readonly basis: Basis;
}

/** A mains-to-DC module to buy: a row of the converter catalogue, and what was read on the part in hand instead. */
export interface PlanConverter {
  /** Names the row. */
  readonly id: string;
  readonly outputVolts?: number;
  readonly ratedAmps?: number;
  readonly efficiency?: number;
  readonly maxLoadFarads?: number;
  readonly minLoadAmps?: number;
  /** Into its output at 230 V 50 Hz, amps RMS. */
  readonly leakageAmps?: number;
  /** What it does beyond its limit, and the limit over its rated amps. */
  readonly startUpKind?: StartUpLimit['kind'];
  readonly overloadRatio?: number;
  /** As somebody vouches for it; when left out, only the test voltage of the catalogue's row is known. */
  readonly insulation?: Barriers;
}

/** Parts that the reader has chosen. What is left out is sized, with the reason given. */
export interface PlanParts {
  readonly topology?: 'bridge' | 'centre-tap' | 'half-wave' | 'doubler';
  /** Names a row of the diode catalogue. */
  readonly diode?: string;
  readonly reservoir?: {
    readonly farads: number;
    readonly ratedVolts: number;
    /** Printed ripple rating at 120 Hz and its rated temperature; left out when unknown. */
    readonly ratedRippleAmps?: number;
  };
  /** Names a row of the regulator catalogue; it must suit `rail.regulation`. */
  readonly regulator?: string;
  /** What the regulator is bolted to: a part of its own, or the chassis itself (which takes no room, and needs a pad). */
  readonly heatsink?: { readonly kind: 'separate' | 'chassis'; readonly kelvinPerWatt: number };
  readonly transformer?: PlanTransformer;
  readonly converter?: PlanConverter;
  /** Capacitance across the rail behind converter or regulator. */
  readonly railFarads?: number;
}

export interface PlanFuse {
  readonly amps: number;
  /** Names a row of the fuse standards: its action, and how its rating is to be read. */
  readonly standard: string;
}

/** Fuses chosen. What is left out is sized. */
export interface PlanProtections {
  /** In the mains lead of an added transformer or converter. */
  readonly primaryFuse?: PlanFuse;
  /** Between winding and rectifier. */
  readonly secondaryFuse?: PlanFuse;
}

/**
 * Ground connections that the reader decides. What the amp already is (its earth, its B+, the winding's own reference
 * and insulation) is told once, under `amp`, and joined to these for the approach in question by `groundsFor`.
 */
export interface PlanGrounds {
  readonly rail: RailReference;
  readonly jacks: readonly Jack[];
  readonly touchableControls: boolean;
  readonly relays: readonly RelayContacts[];
  readonly bondOhms?: number;
}

/** A reader's whole job: plain JSON, SI units. Everything else is computed from it. */
export interface SupplyPlan {
  readonly version: typeof PLAN_VERSION;
  readonly name: string;
  readonly mains: Mains;
  readonly amp: PlanAmp;
  readonly loads: readonly LoadItem[];
  readonly rail: PlanRail;
  readonly approach: Approach | 'undecided';
  readonly parts: PlanParts;
  readonly protections: PlanProtections;
  readonly grounds: PlanGrounds;
}
