import type { HazardHarm } from '../shared/hazard-box.tsx';

/** Something that stands before the first power-up of any supply, whatever its figures. */
export interface FirstPowerHazard {
  readonly harm: HazardHarm;
  readonly title: string;
  readonly why: string;
  readonly instead: string;
}

const NOT_LIMITERS = 'A variable transformer is no limiter, and it does not isolate: both its ends are the mains. An RCD waits for current to earth, and a shorted winding sends none.';

/** Hazards of the first power-up, for what feeds the rail. */
export function firstPowerHazards({ feed }: { readonly feed: 'winding' | 'converter' }): readonly FirstPowerHazard[] {
  return [
    {
      harm: 'fire',
      title: 'First power-up without a limiter',
      why: `A short or a part the wrong way round takes all that the ${feed === 'winding' ? 'winding' : 'mains'} gives, and a small transformer can burn before its fuse opens. ${NOT_LIMITERS}`,
      instead: `feed the DC side from a current-limited bench supply first. Then ${
        feed === 'winding'
          ? 'the transformer alone behind a series lamp, the smallest that lets it run, fuses in, somebody beside you. Behind a lamp only “no short” counts; take the readings without it.'
          : 'the converter at full mains, its own fuse in, into a dummy load within its rating: behind a series lamp it may start, sag, stop and try again with nothing wrong in it. The amp itself still goes behind its lamp.'
      }`,
    },
    {
      harm: 'shock',
      title: 'High voltage left connected, its peak without load unchecked',
      why: 'With valves pulled or cold nothing draws it down: its reservoirs rise to the crest of the winding at the mains of the day, can vent, and keep that charge after the plug is out.',
      instead: 'disconnect it dead and insulate the ends, or check every reservoir’s mark against that peak at high mains. Prove dead before each change; put clips on dead, one hand away, mains parts covered.',
    },
  ];
}
