import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { RectifierSheet, carryingDiodes, type RectifierSheetProps } from '../../drawings/rectifier-sheet.tsx';
import { atDegrees, cyclePlot, peakDegrees, phaseAt, type Cycle } from './cycle.ts';
import { CycleDial } from './cycle-dial.tsx';
import { Plot } from './plot.tsx';
import { showQuantity } from './units.ts';

interface Props {
  readonly instance: string;
  readonly cycle: Cycle;
  /** The corner that is shown, in words. */
  readonly corner: string;
  /** A level that the valley is held against, and what it is called. */
  readonly neededVolts?: number;
  readonly neededName?: string;
  readonly sheet: Pick<RectifierSheetProps, 'windingText' | 'reservoirText' | 'loadText' | 'regulator'>;
}

/** One mains cycle walked by the knob: the dial, the circuit with the way the current takes, and the waveform. */
export function CycleCircuit({ instance, cycle, corner, neededVolts, neededName = 'what is needed', sheet }: Props): VNode {
  const [turned, setTurned] = useState<number>();
  const degrees = turned ?? peakDegrees(cycle);
  const phase = phaseAt(cycle, degrees);
  const amps = showQuantity(Math.abs(atDegrees(cycle.windingAmps, degrees)), 'A', 2);
  const volts = showQuantity(atDegrees(cycle.railVolts, degrees), 'V');
  const diodes = carryingDiodes(cycle.topology, phase);
  return (
    <>
      <div class="plots">
      <CycleDial
        instance={instance}
        amps={cycle.windingAmps.slice(0, -1)}
        degrees={degrees}
        onTurn={setTurned}
        reading={phase === 'resting' ? 'no diode' : `${diodes.join(', ')} · ${amps}`}
        spoken={phase === 'resting' ? `no diode carries current, the reservoir is at ${volts}` : `${diodes.join(' and ')} ${diodes.length === 1 ? 'carries' : 'carry'} ${amps}, the reservoir is at ${volts}`}
        caption={`One mains cycle at ${corner}. The band is thick where diodes carry current: plain one way, hatched the other. Turn the knob, or use the arrow keys.`}
      />
      <figure class="circuit">
        <RectifierSheet id={`${instance}-circuit`} topology={cycle.topology} {...sheet} phase={phase} pathAmps={amps} reservoirVolts={volts} />
        <figcaption>
          {phase === 'resting' ? 'Between the pulses the reservoir feeds the load alone.' : 'A pulse: the winding charges the reservoir and feeds the load at once.'}
        </figcaption>
      </figure>
      </div>
      <Plot
        data={cyclePlot({
          cycle,
          caption: `The reservoir over one mains cycle at ${corner}${neededVolts === undefined ? '' : `, against ${neededName}`}, and the pulses that charge it.`,
          markDegrees: degrees,
          ...(neededVolts === undefined ? {} : { needed: { name: neededName, volts: neededVolts } }),
        })}
      />
    </>
  );
}
