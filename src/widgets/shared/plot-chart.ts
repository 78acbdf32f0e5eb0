/* Loaded only when a plot comes near the view: Chart.js is most of a page's script. */
import { CategoryScale, Chart, Filler, LinearScale, LogarithmicScale, LineController, LineElement, PointElement, type ChartDataset, type Plugin } from 'chart.js';
import type { PlotData, SeriesKind } from './plot-data.ts';
import { showMarked, type Unit } from './units.ts';

Chart.register(LineController, LineElement, PointElement, LinearScale, LogarithmicScale, CategoryScale, Filler);

const COLOURS: Record<SeriesKind, string> = { volts: '--volts', needed: '--volts', amps: '--copper', other: '--ink', limit: '--ink', faint: '--ink-soft' };
const DASHES: Record<SeriesKind, number[]> = { volts: [], needed: [6, 4], amps: [9, 3], other: [2, 3], limit: [12, 3, 2, 3], faint: [1, 3] };

/** Size of a plot on paper, in CSS pixels: its letters stay as large as the text beside it. */
const PAPER_PIXELS = { width: 285, height: 128 };

interface Theme {
  readonly colour: (name: string) => string;
  readonly font: string;
}

/** Reads the page's colours as they apply now; on paper, as they are in light. */
function themeOf(canvas: HTMLCanvasElement, paper: boolean): Theme {
  const probe = document.createElement('span');
  if (paper) probe.style.colorScheme = 'light';
  canvas.parentElement?.append(probe);
  const read = (name: string): string => {
    probe.style.color = `var(${name})`;
    return getComputedStyle(probe).color;
  };
  const colours = Object.fromEntries(['--volts', '--copper', '--ink', '--ink-soft', '--rule'].map((name) => [name, read(name)]));
  const font = getComputedStyle(probe).fontFamily;
  probe.remove();
  return { colour: (name) => colours[name] ?? 'black', font };
}

const markPlugin = (theme: () => Theme, at: () => number | undefined): Plugin<'line'> => ({
  id: 'mark',
  afterDatasetsDraw({ ctx, chartArea, scales }) {
    const x = at();
    if (x === undefined || scales['x'] === undefined) return;
    const pixel = scales['x'].getPixelForValue(x);
    ctx.save();
    ctx.strokeStyle = theme().colour('--ink');
    ctx.setLineDash([3, 3]);
    ctx.lineWidth = 1.5;
    ctx.beginPath();
    ctx.moveTo(pixel, chartArea.top);
    ctx.lineTo(pixel, chartArea.bottom);
    ctx.stroke();
    ctx.restore();
  },
});

const datasets = (data: PlotData, theme: Theme): ChartDataset<'line'>[] =>
  data.series.map((series) => ({
    label: series.name,
    data: series.values.map((y, index) => ({ x: (series.at ?? data.x.values)[index] ?? 0, y })),
    yAxisID: `y-${series.unit}`,
    borderColor: theme.colour(COLOURS[series.kind]),
    borderDash: DASHES[series.kind],
    borderWidth: series.kind === 'needed' ? 1.75 : 2.25,
    ...(series.dots === true ? { showLine: false, pointRadius: 6, pointBackgroundColor: theme.colour(COLOURS[series.kind]) } : { pointRadius: 0 }),
  }));

const scaleFor = (unit: Unit, name: string, position: 'left' | 'right' | 'bottom', theme: Theme, line: boolean, isLogarithmic: boolean) => ({
  type: isLogarithmic ? ('logarithmic' as const) : ('linear' as const),
  position,
  grace: position === 'bottom' ? 0 : '5%',
  title: { display: true, text: name, color: theme.colour('--ink-soft'), font: { family: theme.font, size: 13 } },
  grid: { color: theme.colour('--rule'), drawOnChartArea: line, tickColor: theme.colour('--rule') },
  border: { color: theme.colour('--ink-soft') },
  ticks: {
    color: theme.colour('--ink-soft'),
    font: { family: theme.font, size: 12 },
    maxTicksLimit: 6,
    maxRotation: 0,
    // By ratio only decades are named up the side, 1, 2 and 5 along the foot: what lies between crowds.
    callback: (value: string | number) => (isLogarithmic && !isNamed(Number(value), position === 'bottom' ? [1, 2, 5] : [1]) ? '' : showMarked(Number(value), unit)),
  },
});

const isNamed = (value: number, leading: readonly number[]): boolean => {
  const first = value / 10 ** Math.floor(Math.log10(value) + 1e-9);
  return leading.some((each) => Math.abs(first - each) < 1e-6);
};

const startsFromNothing = (values: readonly number[]): boolean => {
  const lowest = Math.min(...values);
  return lowest >= 0 && lowest < 0.02 * Math.max(...values);
};

const UNIT_NAMES: Partial<Record<Unit, string>> = { V: 'volts', A: 'amps', W: 'watts', s: 'seconds', '°C': 'temperature' };

const scalesFor = (data: PlotData, theme: Theme) => {
  const units = [...new Set(data.series.map((series) => series.unit))];
  return Object.fromEntries([
    ['x', { ...scaleFor(data.x.unit, data.x.name, 'bottom', theme, true, data.isLogarithmic === true), min: data.x.values[0], max: data.x.values.at(-1) }],
    ...units.map((unit, index) => [
      `y-${unit}`,
      {
        // What starts from nothing is drawn from nothing: no room below zero for figures that cannot be there.
        ...(data.isLogarithmic !== true && startsFromNothing(data.series.filter((series) => series.unit === unit).flatMap(({ values }) => values)) ? { min: 0 } : {}),
        ...scaleFor(unit, UNIT_NAMES[unit] ?? unit, index === 0 ? 'left' : 'right', theme, index === 0, data.isLogarithmic === true),
      },
    ]),
  ]);
};

/** Draws a plot and keeps it drawn in the page's colours. */
export function drawPlot(canvas: HTMLCanvasElement, first: PlotData): { readonly update: (data: PlotData) => void; readonly destroy: () => void } {
  let data = first;
  let theme = themeOf(canvas, false);
  const chart = new Chart(canvas, {
    type: 'line',
    data: { datasets: datasets(data, theme) },
    options: {
      // Values jump to where they are: a curve that glides shows figures that nobody solved.
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      parsing: false,
      normalized: true,
      events: [],
      scales: scalesFor(data, theme),
    },
    plugins: [markPlugin(() => theme, () => data.markAt)],
  });
  const redraw = (paper: boolean): void => {
    theme = themeOf(canvas, paper);
    if (paper) chart.resize(PAPER_PIXELS.width, PAPER_PIXELS.height);
    else chart.resize();
    chart.data.datasets = datasets(data, theme);
    chart.options.scales = scalesFor(data, theme);
    chart.update('none');
  };
  const onScheme = (): void => redraw(false);
  const onPrint = (): void => redraw(true);
  const scheme = matchMedia('(prefers-color-scheme: dark)');
  scheme.addEventListener('change', onScheme);
  addEventListener('beforeprint', onPrint);
  addEventListener('afterprint', onScheme);
  return {
    update: (next) => {
      const sameAxes = next.x.values[0] === data.x.values[0] && next.x.values.at(-1) === data.x.values.at(-1);
      data = next;
      chart.data.datasets = datasets(data, theme);
      if (!sameAxes) chart.options.scales = scalesFor(data, theme);
      chart.update('none');
    },
    destroy: () => {
      scheme.removeEventListener('change', onScheme);
      removeEventListener('beforeprint', onPrint);
      removeEventListener('afterprint', onScheme);
      chart.destroy();
    },
  };
}
