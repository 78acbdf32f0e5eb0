import type { Basis } from '../findings.ts';
import { COPPER_OHM_METRES, copperRatio } from '../parts/copper.ts';
import { CHASSIS_AIR_CELSIUS } from '../parts/heatsink.ts';
import type { BranchCurrent } from './branch-currents.ts';
import type { GroundingJob } from './job.ts';
import { WINDING_FAULT_CELSIUS, WINDING_SERVICE_CELSIUS } from './limits.ts';

/** What a fault does to one part, against its rating, and roughly how fast. All times and temperatures are estimates. */
export interface PartStress {
  readonly branchId: string;
  readonly name: string;
  /** What is compared: RMS amps for a winding, mean amps for a diode, watts for a resistor. */
  readonly quantity: 'rms amps' | 'mean amps' | 'watts';
  readonly value: number;
  /** Left out when nobody has read it: the part is then not assessed against it. */
  readonly rated?: number;
  readonly ratio?: number;
  /** The temperature it would settle at if nothing failed, and the one it must not pass. */
  /** Diodes only: the peak that it carries every cycle, where that is past the one surge that its sheet allows. */
  readonly surge?: { readonly peakAmps: number; readonly allowedAmps: number };
  readonly finalCelsius?: number;
  readonly limitCelsius?: number;
  /** Seconds until it passes the limit; left out when it does not, or when there is nothing to reckon from. */
  readonly secondsToLimit?: number;
  /** Windings only: seconds until the temperature that even a fault may not reach. */
  readonly secondsToRuin?: number;
  readonly restsOn: readonly Basis[];
}

/** Rise of a class A winding at its rating: takes it to the class's limit from a 55 °C chassis. Assumed. */
const WINDING_RATED_KELVIN = 45;
/** Current density that a small transformer's winding is wound for, A/m². Assumed: 2.5 to 3.5 A/mm² is usual. */
const WINDING_DENSITY = 3e6;
/** Copper: heat capacity J/(kg·K) and density kg/m³ (textbook values), and its resistivity at the temperature of a loaded winding. */
const COPPER = { heat: 385, kilograms: 8960, ohmMetres: COPPER_OHM_METRES * copperRatio({ fromCelsius: 20, toCelsius: 80 }) } as const;
/** How fast the body of a wire-ended rectifier follows its heat. Assumed. */
const DIODE_SECONDS = 15;
/** A film resistor: rated at 70 °C air, 155 °C at its surface (IEC 60115 practice, typical); time constant of a half to one watt body, assumed. */
const RESISTOR = { ratedKelvin: 85, limitCelsius: 155, seconds: 10 } as const;

/** Seconds in which a first-order body passes a limit on its way from one temperature to another; undefined when it never does. */
export function secondsToPass(options: {
  readonly startCelsius: number;
  readonly finalCelsius: number;
  readonly limitCelsius: number;
  readonly timeConstantSeconds: number;
}): number | undefined {
  const { startCelsius, finalCelsius, limitCelsius, timeConstantSeconds } = options;
  if (finalCelsius <= limitCelsius) return undefined;
  if (startCelsius >= limitCelsius) return 0;
  return timeConstantSeconds * Math.log((finalCelsius - startCelsius) / (finalCelsius - limitCelsius));
}

const windingStress = (branch: BranchCurrent, air: number, rated: number | undefined): PartStress => {
  const base = { branchId: branch.id, name: branch.name, quantity: 'rms amps', value: branch.rmsAmps } as const;
  if (rated === undefined) return { ...base, restsOn: [] };
  const ratio = branch.rmsAmps / rated;
  const startCelsius = air + WINDING_RATED_KELVIN * (branch.alone.rmsAmps / rated) ** 2;
  const finalCelsius = air + WINDING_RATED_KELVIN * ratio ** 2;
  // Heat stored in the copper alone sets the pace: kelvin per second at the rating, whatever the winding's size.
  const kelvinPerSecond = (WINDING_DENSITY ** 2 * COPPER.ohmMetres) / (COPPER.heat * COPPER.kilograms);
  const timeConstantSeconds = WINDING_RATED_KELVIN / kelvinPerSecond;
  const pass = (limitCelsius: number): number | undefined => secondsToPass({ startCelsius, finalCelsius, limitCelsius, timeConstantSeconds });
  const secondsToLimit = pass(WINDING_SERVICE_CELSIUS.value);
  const secondsToRuin = pass(WINDING_FAULT_CELSIUS.value);
  return {
    ...base,
    rated,
    ratio,
    finalCelsius,
    limitCelsius: WINDING_SERVICE_CELSIUS.value,
    ...(secondsToLimit === undefined ? {} : { secondsToLimit }),
    ...(secondsToRuin === undefined ? {} : { secondsToRuin }),
    restsOn: ['rated', 'assumed'],
  };
};

const diodeStress = (branch: BranchCurrent, job: GroundingJob, air: number): PartStress => {
  const diode = job.supply.kind === 'winding' ? job.supply.diode : undefined;
  const rated = diode?.ratedMeanAmps;
  const base = { branchId: branch.id, name: branch.name, quantity: 'mean amps', value: branch.meanAmps } as const;
  const against = rated === undefined ? {} : { rated, ratio: branch.meanAmps / rated };
  if (diode?.surgeAmps !== undefined && branch.peakAmps > diode.surgeAmps) {
    // The sheet allows that peak for one half cycle now and then; here every cycle brings it.
    const surge = { peakAmps: branch.peakAmps, allowedAmps: diode.surgeAmps };
    return { ...base, ...against, surge, secondsToLimit: 1 / job.hertz, restsOn: ['rated'] };
  }
  if (diode?.kelvinPerWatt === undefined || diode.maxJunctionCelsius === undefined) return { ...base, ...against, restsOn: rated === undefined ? [] : ['rated'] };
  const startCelsius = air + branch.alone.watts * diode.kelvinPerWatt;
  const finalCelsius = air + branch.watts * diode.kelvinPerWatt;
  const limitCelsius = diode.maxJunctionCelsius;
  const seconds = secondsToPass({ startCelsius, finalCelsius, limitCelsius, timeConstantSeconds: DIODE_SECONDS });
  return { ...base, ...against, finalCelsius, limitCelsius, ...(seconds === undefined ? {} : { secondsToLimit: seconds }), restsOn: ['typical', 'assumed'] };
};

const resistorStress = (branch: BranchCurrent, air: number, rated: number | undefined): PartStress => {
  const base = { branchId: branch.id, name: branch.name, quantity: 'watts', value: branch.watts } as const;
  if (rated === undefined) return { ...base, restsOn: [] };
  const startCelsius = air + RESISTOR.ratedKelvin * (branch.alone.watts / rated);
  const finalCelsius = air + RESISTOR.ratedKelvin * (branch.watts / rated);
  const { limitCelsius } = RESISTOR;
  const seconds = secondsToPass({ startCelsius, finalCelsius, limitCelsius, timeConstantSeconds: RESISTOR.seconds });
  return {
    ...base,
    rated,
    ratio: branch.watts / rated,
    finalCelsius,
    limitCelsius,
    ...(seconds === undefined ? {} : { secondsToLimit: seconds }),
    restsOn: ['rated', 'assumed'],
  };
};

const resistorRating = (branch: BranchCurrent, job: GroundingJob): number | undefined => {
  const { winding, rail } = job.connections;
  const centre = winding.kind === 'elevated' ? winding.centre : winding;
  if (branch.kind === 'centre-resistor' && centre.kind === 'artificial-centre') {
    return centre.resistors[branch.id === 'centre-resistor-1' ? 0 : 1].ratedWatts;
  }
  return branch.id === 'rail-reference' && rail.kind === 'through-resistance' ? rail.ratedWatts : undefined;
};

/**
 * Stress of every winding, diode and resistor of which somebody could read a rating, and roughly how soon each passes
 * the temperature it must not.
 *
 * Estimates, all of them: each part is one body that warms exponentially. A winding's pace is that of its copper alone,
 * at 3 A/mm² where it carries its rating and 45 K above the chassis air there (assumed); resistance rising with heat
 * is left out, so windings are a little worse than said. Source: solved currents; IEC 61558-1 for limits.
 */
export function partStresses(job: GroundingJob, branches: readonly BranchCurrent[]): readonly PartStress[] {
  const air = job.airCelsius ?? CHASSIS_AIR_CELSIUS;
  const ratedAmps = job.supply.kind === 'winding' ? job.supply.ratedAmps : undefined;
  return branches.flatMap((branch) => {
    if (branch.kind === 'half-winding' || branch.kind === 'winding') return [windingStress(branch, air, ratedAmps)];
    if (branch.kind === 'diode') return [diodeStress(branch, job, air)];
    const resistive = branch.kind === 'centre-resistor' || (branch.id === 'rail-reference' && job.connections.rail.kind === 'through-resistance');
    return resistive ? [resistorStress(branch, air, resistorRating(branch, job))] : [];
  });
}

/** The part that a fault ruins first, if any does. */
export function firstToOverheat(stresses: readonly PartStress[]): PartStress | undefined {
  return stresses
    .filter((stress) => stress.secondsToLimit !== undefined)
    .sort((a, b) => (a.secondsToLimit ?? 0) - (b.secondsToLimit ?? 0))[0];
}
