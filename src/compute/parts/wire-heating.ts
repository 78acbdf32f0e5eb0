import { requireNumber } from '../errors.ts';
import { BUNDLE_SHARE, wireOhms } from './wire.ts';
import type { WireRow } from './wire.ts';

/** Wall of hook-up wire's insulation, metres, and its conductivity, W/(m·K) (PVC). Typical, assumed. */
const WALL_METRES = 0.4e-3;
const WALL_CONDUCTIVITY = 0.17;
/** Of coloured insulation. */
const EMISSIVITY = 0.9;
const STEFAN_BOLTZMANN = 5.670374e-8;
const GRAVITY = 9.80665;
const PRANDTL = 0.71;
const KELVIN = 273.15;

/** Where the search stops: insulation of any kind is long gone. */
export const WIRE_CEILING_CELSIUS = 400;

/**
 * Heat that a metre of wire of outer diameter `metres` gives to still air, watts, its surface `rise` kelvin warmer than air:
 * free convection from a horizontal cylinder (Churchill and Chu) and radiation. Air's figures at the film temperature.
 */
function shedWatts(metres: number, rise: number, airCelsius: number): number {
  const film = airCelsius + rise / 2;
  const viscosity = 1.33e-5 + 9.2e-8 * film;
  const conductivity = 0.0241 + 7.5e-5 * film;
  const rayleigh = (GRAVITY * rise * metres ** 3 * PRANDTL) / ((film + KELVIN) * viscosity ** 2);
  const nusselt = (0.6 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.559 / PRANDTL) ** (9 / 16)) ** (8 / 27)) ** 2;
  const radiated = EMISSIVITY * STEFAN_BOLTZMANN * ((airCelsius + rise + KELVIN) ** 4 - (airCelsius + KELVIN) ** 4);
  return Math.PI * metres * ((nusselt * conductivity * rise) / metres + radiated);
}

export interface WireHeat {
  /** Of the copper; 400 °C where it would be more. */
  readonly celsius: number;
  readonly wattsPerMetre: number;
}

/**
 * Steady temperature of one insulated wire, °C, carrying `amps` RMS in still air: copper heat against convection and
 * radiation, its resistance rising with it. In a hot bundle it is reckoned as if it carried its current over
 * `BUNDLE_SHARE`, the same practice as for its rating. Insulation of 0.4 mm PVC, typical: good to some ten kelvin.
 * Amps 0 to 1000, air −40 to 150 °C. Source: Churchill and Chu, free convection from a horizontal cylinder, 1975.
 */
export function wireTemperature(options: { readonly row: WireRow; readonly amps: number; readonly airCelsius: number; readonly hotBundle: boolean }): WireHeat {
  const { row, hotBundle } = options;
  const amps = requireNumber('amps', options.amps, { min: 0, max: 1000 });
  const air = requireNumber('airCelsius', options.airCelsius, { min: -40, max: 150 });
  const bare = 2 * Math.sqrt(row.squareMetres / Math.PI);
  const outer = bare + 2 * WALL_METRES;
  const wallKelvinPerWatt = Math.log(outer / bare) / (2 * Math.PI * WALL_CONDUCTIVITY);
  const crowding = hotBundle ? 1 / BUNDLE_SHARE ** 2 : 1;
  const heat = (celsius: number): number => amps * amps * wireOhms({ row, metres: 1, celsius });
  /** Heat made less heat shed with the copper at this temperature: falls through nought at the answer. */
  const excess = (celsius: number): number => {
    const made = crowding * heat(celsius);
    return made - shedWatts(outer, Math.max(0, celsius - made * wallKelvinPerWatt - air), air);
  };
  let [low, high] = [air, WIRE_CEILING_CELSIUS];
  if (amps > 0 && excess(high) > 0) low = high;
  for (let round = 0; round < 50 && high - low > 1e-6; round += 1) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0) low = middle;
    else high = middle;
  }
  return { celsius: low, wattsPerMetre: heat(low) };
}
