import { fuseAtSwitchOn, leastMeltingA2s, type FuseAtSwitchOn } from '../../compute/in-time/fuse-at-switch-on.ts';
import { fuseInFault, type FuseInFault } from '../../compute/in-time/fuse-in-fault.ts';
import { chargingSurge, primarySurge, type ChargingSurge } from '../../compute/in-time/inrush.ts';
import { timedSupply } from '../../compute/in-time/timed-supply.ts';
import { windingHeat, type WindingHeat } from '../../compute/in-time/winding-heating.ts';
import { diodePart } from '../../compute/parts/diode.ts';
import { fuseRatingFor, fuseStandard, IEC_FUSE_AMPS, pulseShare, type FuseStandard } from '../../compute/parts/fuse.ts';
import { ratedPrimaryAmps } from '../../compute/parts/transformer.ts';
import { chainDiode, chainReservoir } from '../../compute/supplies/chain-parts.ts';
import type { ChainInput } from '../../compute/supplies/chain-types.ts';
import { solveChain } from '../../compute/supplies/chain.ts';
import { decidingCorners } from '../shared/chain-view.ts';
import type { ValuesOf } from '../shared/definition.ts';
import { mainsOf, windingOf } from '../shared/supply-fields.ts';
import type { fields } from './fields.ts';

export type Values = ValuesOf<typeof fields>;

/** Margin over the running current that a fuse is picked with. */
const CARRY_MARGIN = 1.1;
/** Over the rated primary current, where a fuse for it begins (practice of transformer makers). */
const PRIMARY_START = 1.6;

export interface FuseCase extends FusePlace {
  readonly standard: FuseStandard;
  /** Rated current of the fuse looked at, and of the one the place asks for. */
  readonly amps: number;
  readonly pickedAmps: number;
  /** Undefined where there is none. */
  readonly fitted: number | undefined;
  readonly atSwitchOn: FuseAtSwitchOn;
  readonly race: FuseInFault;
  readonly secondaryShortAmps: number;
}

function chainOf(values: Values): ChainInput {
  const { topology, farads, loadAmps, airCelsius } = values;
  const mains = mainsOf(values);
  return {
    mains,
    winding: windingOf(values),
    topology,
    diode: chainDiode(diodePart(values.diode)),
    reservoir: chainReservoir({ farads, ratedVolts: 63, topology, hertz: mains.hertz, airCelsius }),
    stage: { kind: 'none', designVolts: Math.max(1, values.windingVolts), steady: true },
    load: { offAmps: 0, runningAmps: loadAmps, everythingAmps: loadAmps },
    cooling: { airCelsius },
  };
}

/** The smallest standard rating that carries the running current and outlives its switch-ons. */
function pick(values: Values, standard: FuseStandard, runningAmps: number, surgeA2s: number, ratedPrimary: number): number {
  const carries = fuseRatingFor({ standard, rmsAmps: Math.min(100, CARRY_MARGIN * runningAmps) }) ?? 10;
  const least = values.place === 'primary' ? Math.max(carries, PRIMARY_START * ratedPrimary) : carries;
  const survives = IEC_FUSE_AMPS.find((amps) => {
    if (amps < least * (1 - 1e-9)) return false;
    const melting = leastMeltingA2s({ standard, ratedAmps: amps });
    return melting === undefined || melting.a2s * pulseShare(values.starts) >= surgeA2s;
  });
  return survives ?? 10;
}

/** What the place asks of any fuse: the circuit, solved once. */
export interface FusePlace {
  readonly chain: ChainInput;
  readonly runningAmps: number;
  readonly worstCorner: string;
  readonly surge: ChargingSurge;
  /** I²t through a fuse here at switch-on. */
  readonly surgeA2s: number;
  readonly ratedPrimary: number;
  readonly heat: WindingHeat;
  /** Amps in the fuse per amp in the winding. */
  readonly ratio: number;
}

/** Solves the circuit around the fuse. Throws what the module refuses, `SolveError` where nothing could be solved. */
export function fusePlace(values: Values): FusePlace {
  const chain = chainOf(values);
  const { windingCurrent } = decidingCorners(solveChain(chain));
  const surge = chargingSurge(timedSupply({ chain }));
  const halves = values.topology === 'centre-tap' ? 2 : 1;
  const { openCircuitVolts } = chain.winding;
  const voltAmps = Math.min(5000, Math.max(0.5, halves * values.windingVolts * values.windingAmps));
  const ratedPrimary = ratedPrimaryAmps({ voltAmps, mainsVolts: values.mainsVolts });
  const isPrimary = values.place === 'primary';
  const ratio = isPrimary ? openCircuitVolts / values.mainsVolts : 1;
  const primary = primarySurge({ surge, secondaryVolts: openCircuitVolts, mainsVolts: values.mainsVolts, hertz: chain.mains.hertz, transformer: { ratedPrimaryAmps: ratedPrimary, regulation: values.regulation } });
  return {
    chain,
    // Each half of a centre tap carries its own pulses; the primary carries both.
    runningAmps: windingCurrent.windingRmsAmps * ratio * (isPrimary ? Math.sqrt(halves) : 1),
    worstCorner: windingCurrent.corner.words,
    surge,
    surgeA2s: isPrimary ? (primary.a2sBound ?? primary.reflectedA2s) : surge.a2s,
    ratedPrimary,
    heat: windingHeat({ ratedAmps: values.windingAmps }),
    ratio,
  };
}

/** One fuse in that place. */
export function fuseIn(place: FusePlace, values: Values): FuseCase {
  const { chain, runningAmps, surgeA2s, heat } = place;
  const { openCircuitVolts, ohms } = chain.winding;
  const standard = fuseStandard(values.standard);
  const pickedAmps = pick(values, standard, runningAmps, surgeA2s, place.ratedPrimary);
  const fitted = values.fuse === 'none' ? undefined : values.fuse === 'this' ? values.fuseAmps : pickedAmps;
  const amps = fitted ?? pickedAmps;
  return {
    ...place,
    standard,
    amps,
    pickedAmps,
    fitted,
    atSwitchOn: fuseAtSwitchOn({ standard, ratedAmps: amps, surgeA2s, runningRmsAmps: runningAmps, starts: values.starts }),
    // A short comes as a rule when everything is warm: the winding starts from its rated temperature, which is the harder race.
    race: fuseInFault({
      standard, ratedAmps: amps, place: values.place, winding: { openCircuitVolts, ohms: Math.max(ohms, 1e-3) }, mainsVolts: values.mainsVolts, heat,
      airCelsius: values.airCelsius, startCelsius: warmCelsius(values, heat), classId: values.insulationClass,
    }),
    secondaryShortAmps: openCircuitVolts / Math.max(ohms, 1e-3),
  };
}

/** The winding at its rated load, where a short finds it. */
export const warmCelsius = ({ airCelsius }: Pick<Values, 'airCelsius'>, { ratedKelvin }: WindingHeat): number => airCelsius + ratedKelvin;
