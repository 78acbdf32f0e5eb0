import type { Room } from '../plan/plan-types.ts';

/*
 * Boxes around typical parts, cubic metres, as power laws through catalogue sizes. Good enough to tell what fits a
 * chassis and what does not; typical throughout, and the part in hand is measured before a hole is drilled.
 */

/** Laminated or potted transformer: 3 VA about 28 cm³, 50 VA about 190 cm³. */
export const transformerVolume = (voltAmps: number): number => 13.5e-6 * voltAmps ** 0.67;

/** Encapsulated converter: 5 W about 20 cm³, 20 W about 67 cm³. */
export const converterVolume = (watts: number): number => 4.7e-6 * watts ** 0.9;

/** Radial or snap-in electrolytic: 2200 µF 25 V about 6.4 cm³. */
export const reservoirVolume = (farads: number, ratedVolts: number): number => 6.4e-6 * ((farads * ratedVolts) / 0.055) ** 0.75;

/** Heatsink in still air: 20 K/W about 6 cm³, 5 K/W about 45 cm³. */
export const heatsinkVolume = (kelvinPerWatt: number): number => 5e-4 * kelvinPerWatt ** -1.5;

/** A TO-220 with its legs, a bridge, a fuse in its holder, a step-down module. */
export const SMALL_VOLUMES = { regulator: 1.5e-6, rectifier: 2e-6, fuse: 5e-6, stepDown: 15e-6 } as const;

/** The room that parts take with their wiring, fixings and air, over their own (assumed). */
const PACKING = 1.5;

export type VolumeClass = 'matchbox' | 'cigarette packet' | 'large';

/** Room that parts of so much volume ask for, as a size one can picture: to 40 cm³, to 150 cm³, above. */
export function volumeClass(partsCubicMetres: number): VolumeClass {
  const needed = partsCubicMetres * PACKING;
  if (needed <= 40e-6) return 'matchbox';
  return needed <= 150e-6 ? 'cigarette packet' : 'large';
}

/** Share of the free room that the parts need with their wiring; Infinity when there is no room. */
export function roomShare(partsCubicMetres: number, room: Room): number {
  const free = room.lengthMetres * room.widthMetres * room.heightMetres;
  return free > 0 ? (partsCubicMetres * PACKING) / free : Infinity;
}
