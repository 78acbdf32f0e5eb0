import { InputError, requireNumber } from '../errors.ts';
import type { CatalogueRow } from './row.ts';

export interface ResistorRow extends CatalogueRow {
  readonly ratedWatts: number;
  /** Full rating up to here, none at all there; straight between. */
  readonly fullToCelsius: number;
  readonly noneAtCelsius: number;
}

const film = (ratedWatts: number): ResistorRow => ({
  id: `film-${String(ratedWatts).replace('.', '-')}w`, name: `Film, ${ratedWatts} W`, ratedWatts, fullToCelsius: 70, noneAtCelsius: 155, basis: 'typical', source: { id: 'typical-resistors' },
});
const wirewound = (ratedWatts: number): ResistorRow => ({
  id: `wirewound-${ratedWatts}w`, name: `Wirewound, ${ratedWatts} W`, ratedWatts, fullToCelsius: 40, noneAtCelsius: 275, basis: 'typical', source: { id: 'typical-resistors' },
});

/** Power resistors. Typical ratings. */
export const RESISTORS: readonly ResistorRow[] = [0.25, 0.5, 1, 2, 3].map(film).concat([5, 10].map(wirewound));

/** Share of its derated rating to use, for a surface that does not scorch the board. Practice. */
export const RESISTOR_SHARE = 0.5;

/** What a resistor may dissipate in air of a temperature, watts. −55 to 300 °C. */
export function resistorWattsAllowed(options: { readonly row: ResistorRow; readonly airCelsius: number }): number {
  const { ratedWatts, fullToCelsius, noneAtCelsius } = options.row;
  const air = requireNumber('airCelsius', options.airCelsius, { min: -55, max: 300 });
  return ratedWatts * Math.min(1, Math.max(0, (noneAtCelsius - air) / (noneAtCelsius - fullToCelsius)));
}

/** What a resistor of any rating may dissipate, watts: as a film part up to 3 W, as a wirewound one above. 10 mW–1 kW. */
export function resistorAllowance(options: { readonly ratedWatts: number; readonly airCelsius: number }): number {
  const ratedWatts = requireNumber('ratedWatts', options.ratedWatts, { min: 0.01, max: 1000 });
  const like = ratedWatts <= 3 ? film(ratedWatts) : wirewound(ratedWatts);
  return resistorWattsAllowed({ row: like, airCelsius: options.airCelsius });
}

/** The smallest row that carries `watts` with at most `share` (default half) of what it may in that air; `undefined` when none does. */
export function resistorFor(options: { readonly watts: number; readonly airCelsius: number; readonly share?: number }): ResistorRow | undefined {
  const watts = requireNumber('watts', options.watts, { min: 0, max: 1000 });
  const share = requireNumber('share', options.share ?? RESISTOR_SHARE, { min: 0.1, max: 1 });
  return RESISTORS.find((row) => watts <= share * resistorWattsAllowed({ row, airCelsius: options.airCelsius }) * (1 + 1e-9));
}

/** The row with this id. Throws `InputError` when there is none. */
export function resistorRow(id: string): ResistorRow {
  const found = RESISTORS.find((row) => row.id === id);
  if (found === undefined) throw new InputError('resistor', id, { expected: RESISTORS.map((row) => row.id).join(', ') });
  return found;
}
