import type { VNode } from 'preact';
import { Field } from '../shared/field.tsx';
import { HazardBox } from '../shared/hazard-box.tsx';
import type { ViewProps } from '../shared/use-calculator.ts';
import { Verdict } from '../shared/verdict-mark.tsx';
import type { BenchSheetView, SheetLine, SheetStage, benchSheet } from './state.ts';

type FieldOf = ViewProps<typeof benchSheet>['state']['field'];

const WIDTH = 160;

/** Where a reading fell among what is expected: thin the extremes, thick the middle nine tenths, a dot what was read. */
function Strip({ strip }: { readonly strip: SheetLine['strip'] }): VNode {
  const x = (share: number): number => share * WIDTH;
  return (
    <svg class="sheet-strip" viewBox={`0 0 ${WIDTH} 14`} width={WIDTH} height="14" aria-hidden="true" focusable="false">
      <path class="sheet-whole" d={`M${x(strip.min)} 7H${x(strip.max)}`} />
      <path class="sheet-middle" d={`M${x(strip.low)} 7H${x(strip.high)}`} />
      <path class="sheet-nominal" d={`M${x(strip.nominal)} 1V13`} />
      {strip.read !== undefined && <circle class="sheet-read" cx={x(strip.read)} cy="7" r="4.5" />}
    </svg>
  );
}

function Line({ line, field }: { readonly line: SheetLine; readonly field: FieldOf }): VNode {
  return (
    <li class="row">
      <p>
        {line.where}, <span class="rests-on">{line.instrument}</span>: <Field {...field(line.id)} />
      </p>
      <div class="row-result">
        <span class="value">{line.expected}</span>
        <Strip strip={line.strip} />
        {line.level !== undefined && <Verdict level={line.level} found={line.off} />}
        <span class="rests-on">
          likely {line.nominal}
          {line.isEstimate ? ', an estimate' : ''}
          {line.other !== undefined && `; ${line.other}`}
        </span>
      </div>
    </li>
  );
}

function Stage({ stage, field }: { readonly stage: SheetStage; readonly field: FieldOf }): VNode {
  return (
    <section>
      <h3>{stage.name}</h3>
      <p class="rests-on">{stage.how}</p>
      <ol class="rows">
        {stage.lines.map((line) => (
          <Line key={line.id} line={line} field={field} />
        ))}
      </ol>
    </section>
  );
}

/** What stands before the first power-up, whatever the readings say. */
export function FirstPower({ hazards }: { readonly hazards: BenchSheetView['firstPower'] }): VNode {
  return (
    <section class="first-power">
      <h3>Before the first power</h3>
      {hazards.map(({ harm, title, why, instead }) => (
        <HazardBox key={title} harm={harm} title={title} instead={instead}>
          <p>{why}</p>
        </HazardBox>
      ))}
    </section>
  );
}

/** The sheet itself: stage by stage, what to read, what to expect, and room for what was read. */
export function Sheet({ stages, field }: { readonly stages: readonly SheetStage[]; readonly field: FieldOf }): VNode {
  return (
    <div class="sheet">
      {stages.map((stage) => (
        <Stage key={stage.name} stage={stage} field={field} />
      ))}
    </div>
  );
}

/** What the readings point to, the likeliest first, and how to be sure. */
export function Causes({ view }: { readonly view: BenchSheetView }): VNode | null {
  if (view.causes.length === 0 && !view.isLooking) return null;
  return (
    <section>
      <h3>What the readings point to</h3>
      {view.isLooking && <p>Being worked out: each cause is solved on this supply. Take no further reading under power until it stands here.</p>}
      {view.powerOff !== undefined && (
        <p class="power-off">
          <strong>{view.powerOff}</strong>
        </p>
      )}
      <ol class="sheet-causes">
        {view.causes.map((cause) => (
          <li key={cause.words}>
            <p>
              <strong>{cause.words}</strong> <span class="value">{cause.share}</span>
            </p>
            <p>To be sure: {cause.confirm}</p>
            {cause.next !== undefined && <p class="rests-on">What tells it from the next: {cause.next}.</p>}
          </li>
        ))}
      </ol>
      <p class="rests-on">{view.causesNote}</p>
    </section>
  );
}
