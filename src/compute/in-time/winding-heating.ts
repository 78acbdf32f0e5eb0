import { requireNumber } from '../errors.ts';
import { COPPER_OHM_METRES, copperRatio } from '../parts/copper.ts';
import { CHASSIS_AIR_CELSIUS } from '../parts/heatsink.ts';

/** How a winding warms: what it rises at its rating, and how fast the heat stored in its copper lets it. */
export interface WindingHeat {
  /** RMS current at which it rises by `ratedKelvin`. */
  readonly ratedAmps: number;
  readonly ratedKelvin: number;
  /** Of the copper alone; iron and insulation slow it further once the heat has reached them. */
  readonly timeConstantSeconds: number;
}

/** Rise of a class A winding at its rating: to the class's limit from a chassis at 55 °C. Assumed. */
const RATED_KELVIN = 45;
/** Current density that small windings are wound for, A/m². Assumed: 2.5 to 3.5 A/mm² is usual. */
const DENSITY = 3e6;
/** Copper's heat capacity, J/(kg·K), and density, kg/m³. Textbook. */
const COPPER_HEAT = 385;
const COPPER_DENSITY = 8960;

/**
 * Thermal model of a winding of which nothing but its rating is known: heat stays in the copper at first, so its rate of
 * rise at rated current depends on current density alone, J²ρ/(c·d), whatever its size. An estimate, and said to be one.
 * `ratedAmps` 1 mA to 1 kA, `ratedKelvin` 5 to 150 (45 when left out, assumed). Throws `InputError` outside.
 */
export function windingHeat(options: { readonly ratedAmps: number; readonly ratedKelvin?: number }): WindingHeat {
  const ratedAmps = requireNumber('ratedAmps', options.ratedAmps, { min: 1e-3, max: 1000 });
  const ratedKelvin = requireNumber('ratedKelvin', options.ratedKelvin ?? RATED_KELVIN, { min: 5, max: 150 });
  const ohmMetres = COPPER_OHM_METRES * copperRatio({ fromCelsius: 20, toCelsius: CHASSIS_AIR_CELSIUS + ratedKelvin });
  const kelvinPerSecond = (DENSITY * DENSITY * ohmMetres) / (COPPER_HEAT * COPPER_DENSITY);
  return { ratedAmps, ratedKelvin, timeConstantSeconds: ratedKelvin / kelvinPerSecond };
}

/**
 * Rate of change of its temperature, K/s, at a temperature and a current. Copper gains resistance as it warms, so the
 * same current heats it more: the rise at rated current holds at its rated temperature.
 */
export function windingKelvinPerSecond(options: { readonly heat: WindingHeat; readonly celsius: number; readonly airCelsius: number; readonly rmsAmps: number }): number {
  const { heat, celsius, airCelsius, rmsAmps } = options;
  const ratio = rmsAmps / heat.ratedAmps;
  const hotter = copperRatio({ fromCelsius: airCelsius + heat.ratedKelvin, toCelsius: Math.min(celsius, 1000) });
  return (heat.ratedKelvin * ratio * ratio * hotter - (celsius - airCelsius)) / heat.timeConstantSeconds;
}
