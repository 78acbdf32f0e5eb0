import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { CALCULATORS } from '../../src/widgets/registry.ts';
import { launchChromium } from './chromium.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const KILO = 1000;

describe.each(CALCULATORS.map(({ id }) => id))('the page of %s', (id) => {
  it('sends at most 40 kB of compressed script before a plot is near, and 150 kB with it', async () => {
    const page = await browser.newPage({ viewport: { width: 390, height: 700 } });
    const sizes = new Map<string, Promise<number>>();
    page.on('response', (response) => {
      if (response.request().resourceType() === 'script') sizes.set(response.url(), response.body().then((body) => gzipSync(body, { level: 9 }).length));
    });
    const sum = async (): Promise<number> => (await Promise.all(sizes.values())).reduce((total, size) => total + size, 0);
    await page.goto(`${inject('site')}calculators/${id}/`);
    await page.waitForSelector('.calculator-foot');
    const before = await sum();
    expect(before).toBeGreaterThan(0);
    expect(before).toBeLessThanOrEqual(40 * KILO);
    const plot = page.locator('.plot canvas').first();
    if ((await plot.count()) > 0) {
      await plot.scrollIntoViewIfNeeded();
      await page.waitForFunction(() => (document.querySelector('.plot canvas') as HTMLCanvasElement | null)?.style.display === 'block');
      const after = await sum();
      expect(after).toBeGreaterThan(before);
      expect(after).toBeLessThanOrEqual(150 * KILO);
    }
    await page.close();
  });
});
