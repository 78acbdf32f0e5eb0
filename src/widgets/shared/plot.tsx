import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { plotTable, type PlotData, type SeriesKind } from './plot-data.ts';

const LINE_CLASS: Record<SeriesKind, string> = { volts: 'volts', needed: 'volts-needed', amps: 'amps', other: 'other-line', limit: 'limit-line', faint: 'faint-line' };

type Drawn = { readonly update: (data: PlotData) => void; readonly destroy: () => void };

/** How near the view a plot must come before its script is fetched. */
const NEAR = '240px';

/** Curves, drawn once they are near the view, with the same figures as a table behind them. */
export function Plot({ data }: { readonly data: PlotData }): VNode {
  const canvas = useRef<HTMLCanvasElement>(null);
  const drawn = useRef<Drawn>();
  const latest = useRef(data);
  const [failed, setFailed] = useState(false);
  latest.current = data;

  useEffect(() => {
    const element = canvas.current;
    if (element === null) return undefined;
    let gone = false;
    const draw = async (): Promise<void> => {
      try {
        const { drawPlot } = await import('./plot-chart.ts');
        if (!gone && drawn.current === undefined) drawn.current = drawPlot(element, latest.current);
      } catch {
        // Offline without the script in the cache: the table below holds the same figures.
        if (!gone) setFailed(true);
      }
    };
    const watch = new IntersectionObserver(
      (entries) => {
        if (!entries.some((entry) => entry.isIntersecting)) return;
        watch.disconnect();
        void draw();
      },
      { rootMargin: NEAR },
    );
    watch.observe(element);
    return () => {
      gone = true;
      watch.disconnect();
      drawn.current?.destroy();
      drawn.current = undefined;
    };
  }, []);

  useEffect(() => drawn.current?.update(data), [data]);

  const table = plotTable(data);
  return (
    <figure class="plot">
      <div class="plot-frame" {...(failed ? { hidden: true } : {})}>
        <canvas ref={canvas} role="img" aria-label={`${data.caption} The table below holds the same figures.`} />
      </div>
      <figcaption>
        <ul class="plot-key">
          {data.series.map((series) => (
            <li key={series.name}>
              <svg viewBox="0 0 34 6" width="34" height="6" aria-hidden="true" focusable="false">
                {series.dots === true ? <circle class={LINE_CLASS[series.kind]} cx="17" cy="3" r="2" /> : <path class={LINE_CLASS[series.kind]} d="M0 3H34" />}
              </svg>
              {series.name}
            </li>
          ))}
        </ul>
        {data.caption}
        {failed && ' The drawing could not be fetched; the table holds its figures.'}
      </figcaption>
      <details class="plot-table" open={failed}>
        <summary>The same as a table</summary>
        <div class="table-box" tabIndex={0} role="group" aria-label={data.caption}>
          <table>
            <thead>
              <tr>
                {table.head.map((name) => (
                  <th key={name} scope="col">
                    {name}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row, index) => (
                <tr key={index}>
                  {row.map((cell, column) => (column === 0 ? <th key={column} scope="row">{cell}</th> : <td key={column}>{cell}</td>))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </figure>
  );
}
