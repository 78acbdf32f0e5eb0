import type { GroundLink } from '../../compute/grounding/ground-links.ts';
import type { GroundPointName } from '../../drawings/grounding-layout.ts';
import type { Values } from './fields.ts';

/** The field that a point's switch turns. */
export const FIELD_OF = {
  first: 'groundFirst', centre: 'groundCentre', second: 'groundSecond', negative: 'groundNegative', positive: 'groundPositive', bush: 'groundBush', gear: 'groundGear',
} as const satisfies Record<GroundPointName, keyof Values>;

export type GroundField = (typeof FIELD_OF)[GroundPointName];

export const isWinding = ({ source }: Values): boolean => source !== 'converter';

/** The rail can be reached at the jack’s sleeve. */
export const isRailOnSleeve = ({ jack }: Values): boolean => jack === 'negative' || jack === 'positive';

/**
 * The points that a case has, in the order of the drawing. Two that are one and the same point of the circuit stand once:
 * a single diode’s negative is the winding’s second end, a centre-tap pair’s is the tap.
 */
export function pointsOf(values: Values): readonly GroundPointName[] {
  const { topology, centre, lift, jack } = values;
  const winding = isWinding(values);
  const centreIsNegative = topology === 'centre-tap' && centre === 'tap' && lift === 'straight';
  const has: Record<GroundPointName, boolean> = {
    second: winding && topology !== 'half-wave',
    centre: winding && centre !== 'none' && !centreIsNegative,
    first: winding,
    negative: true,
    positive: true,
    bush: isRailOnSleeve(values),
    gear: jack !== 'none',
  };
  return (Object.keys(has) as GroundPointName[]).filter((point) => has[point]);
}

/** The points that are joined to the chassis as the switches stand. */
export const closedPoints = (values: Values): ReadonlySet<GroundPointName> =>
  new Set(pointsOf(values).filter((point) => values[FIELD_OF[point]] === 'chassis'));

/** The point whose switch a path of the solved circuit goes through. */
export function pointOfLink(link: Pick<GroundLink, 'id' | 'node'>, values: Values): GroundPointName | undefined {
  switch (link.id) {
    case 'winding-reference':
      return values.centre !== 'none' && closedPoints(values).has('centre') ? 'centre' : link.node === 'first' ? 'first' : 'second';
    case 'rail-reference':
      return link.node === 'positive' ? 'positive' : 'negative';
    case 'jack-1-bush':
      return 'bush';
    case 'jack-1-outside':
      return 'gear';
    default: {
      const [, point] = link.id.split('further-');
      return point === 'first' || point === 'second' || point === 'negative' || point === 'positive' ? point : undefined;
    }
  }
}

/** What a point is called in a list, and below its switch. */
export function namesOf(point: GroundPointName, values: Values): { readonly name: string; readonly lines: readonly string[] } {
  const names: Record<GroundPointName, { readonly name: string; readonly lines: readonly string[] }> = {
    first: { name: 'winding’s first end', lines: ['first', 'end'] },
    centre: values.centre === 'resistors' ? { name: 'joint of the two resistors', lines: ['centre', 'of two'] } : { name: 'winding’s centre tap', lines: ['centre', 'tap'] },
    second: { name: 'winding’s second end', lines: ['second', 'end'] },
    negative: {
      name: values.topology === 'half-wave' && isWinding(values) ? 'rail’s negative, which is the winding’s second end' : values.topology === 'centre-tap' && isWinding(values) ? 'rail’s negative, which is the centre tap' : 'rail’s negative',
      lines: ['rail', 'negative'],
    },
    positive: { name: 'rail’s positive', lines: ['rail', 'positive'] },
    bush: { name: 'jack’s bush', lines: ['jack’s', 'bush'] },
    gear: { name: 'sleeve of what is plugged in, by its own earth', lines: ['gear’s', 'own earth'] },
  };
  return names[point];
}
