import type { GroundingSolution } from '../../compute/grounding/grounding-result.ts';
import type { SwitchState } from '../../drawings/ground-switch.tsx';
import type { GroundingSheetProps } from '../../drawings/grounding-sheet.tsx';
import type { GroundPointName } from '../../drawings/grounding-layout.ts';
import { showMarked, showQuantity } from '../shared/units.ts';
import type { Values } from './fields.ts';
import { closedPoints, isWinding, namesOf, pointOfLink, pointsOf } from './points.ts';
import { showAmps } from './show-amps.ts';

/** A point with a switch: what a list and the drawing say of it. */
export interface PointState extends SwitchState {
  readonly point: GroundPointName;
}


/** Every point of the case, its switch and the current through it. */
export function pointStates(values: Values, solution: GroundingSolution): readonly PointState[] {
  const closed = closedPoints(values);
  const flows = new Map(solution.links.map((link) => [pointOfLink(link, values), solution.branches.find(({ id }) => id === link.id)]));
  return pointsOf(values).map((point) => {
    const branch = flows.get(point);
    return {
      point,
      ...namesOf(point, values),
      isClosed: closed.has(point),
      ...(branch === undefined ? {} : { ampsText: showAmps(branch.rmsAmps) }),
      isFault: branch?.isFault === true,
    };
  });
}

/** A part that carries a tenth of what circulates is on its way; less, or a current that is only missing, is a load whose volts have changed. */
const ON_THE_WAY = 0.1;

/** The parts that the fault runs through. */
export const faultCarriers = ({ branches, circulating }: GroundingSolution): GroundingSolution['branches'] =>
  branches.filter(({ isFault, kind, excessRmsAmps, rmsAmps }) => isFault && kind !== 'ground-link' && Math.min(excessRmsAmps, rmsAmps) >= ON_THE_WAY * circulating.rmsAmps);

export type DrawnSheet = Omit<GroundingSheetProps, 'id' | 'switches' | 'onToggle' | 'desc'>;

const EARTH: Record<Values['ampEarth'], readonly string[]> = { verified: ['earth,', 'verified'], 'not-checked': ['earth not', 'checked'], absent: ['no earth'] };

/** What the drawing needs besides its switches. */
export function drawnSheet(values: Values, solution: GroundingSolution): DrawnSheet {
  const { topology, centre, lift, bond, jack, mainsFuse, tipOhms, windingFuse } = values;
  const winding = isWinding(values);
  const faults = faultCarriers(solution);
  const onPrimary = solution.primary;
  return {
    shape: {
      feed: winding ? 'winding' : 'converter',
      topology: winding ? topology : 'bridge',
      centre,
      isLifted: winding && centre !== 'none' && lift === 'lifted',
      hasHeaters: values.source === 'heater-winding' && values.heaterAmps !== undefined,
      hasWindingFuse: windingFuse !== undefined,
      hasBondResistor: bond === 'resistor',
      hasCoupling: values.leakageAmps !== undefined,
      jack,
      points: pointsOf(values),
    },
    faults: Object.fromEntries(faults.map((branch) => [branch.id, showAmps(branch.rmsAmps)])),
    texts: {
      feed: winding ? `${showMarked(values.windingVolts, 'V')}` : 'converter',
      rail: `rail ${showQuantity(solution.rail.meanVolts, 'V')}`,
      ...(mainsFuse === undefined ? {} : { mainsFuse: `fuse ${showMarked(mainsFuse, 'A')}` }),
      ...(onPrimary === undefined ? {} : { mainsAmps: onPrimary.fuse === undefined ? showAmps(onPrimary.rmsAmps) : showAmps(onPrimary.fuse.amps) }),
      earth: EARTH[values.ampEarth],
      ...(jack === 'negative' || jack === 'chassis' ? { tip: showMarked(tipOhms, 'Ω') } : {}),
    },
    isEarthed: values.ampEarth !== 'absent',
  };
}
