/*
 * Drags the slider of every calculator of the built site in Chromium and prints the frames that came of it:
 * `npm run build`, then `node tests/bench/calculator-frames.ts`. Figures, not a test: a busy machine drops frames.
 */
import { preview } from 'astro';
import type { Page } from 'playwright-core';
import { CALCULATORS } from '../../src/widgets/registry.ts';
import { launchChromium } from '../browser/chromium.ts';

const MOVES = 240;

interface Drag {
  readonly frames: readonly number[];
  /** Milliseconds of script per change: parsing, solving and showing. */
  readonly work: readonly number[];
}

async function drag(page: Page): Promise<Drag> {
  const slider = page.locator('.field-drag');
  await slider.scrollIntoViewIfNeeded();
  const box = await slider.boundingBox();
  if (box === null) throw new Error('the slider is not shown');
  await page.evaluate(() => {
    const log = { frames: [] as number[], work: [] as number[] };
    Object.assign(globalThis, { dragLog: log });
    let last = performance.now();
    const tick = (now: number): void => {
      log.frames.push(now - last);
      last = now;
      requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
    // Input handlers solve at once; showing follows in a microtask or timer of Preact's, so the end is the next task.
    document.querySelector('.field-drag')?.addEventListener(
      'input',
      () => {
        const start = performance.now();
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => log.work.push(performance.now() - start);
        port2.postMessage(0);
      },
      { capture: true },
    );
  });
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + box.width * 0.4, y);
  await page.mouse.down();
  for (let move = 0; move < MOVES; move += 1) {
    await page.mouse.move(box.x + box.width * (0.5 + 0.3 * Math.sin(move / 12)), y);
  }
  await page.mouse.up();
  return page.evaluate(() => (globalThis as unknown as { dragLog: Drag }).dragLog);
}

const at = (values: readonly number[], part: number): string => {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN).toFixed(1).padStart(6);
};

const server = await preview({ root: process.cwd(), server: { port: 0, host: '127.0.0.1' }, logLevel: 'error' });
const browser = await launchChromium();
try {
  console.log('milliseconds while a value is dragged      frame: median   99 %    worst      work: median   99 %   changes');
  for (const { id } of CALCULATORS) {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await page.goto(`http://127.0.0.1:${server.port}/calculators/${id}/`);
    await page.waitForSelector('.calculator-foot');
    // Everything that a reader would have in view is drawn first, the plot included.
    await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
    await page.waitForTimeout(800);
    await page.locator('.calculator .field-value').first().focus();
    await page.waitForTimeout(500);
    const { frames, work } = await drag(page);
    console.log(`${id.padEnd(45)}${at(frames, 0.5)}  ${at(frames, 0.99)}  ${at(frames, 1)}           ${at(work, 0.5)}  ${at(work, 0.99)}  ${work.length}`);
    await page.close();
  }
} finally {
  await browser.close();
  await server.stop();
}
