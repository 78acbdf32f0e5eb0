import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { launchChromium } from './chromium.ts';
import { openWatched } from './watch.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const address = `${inject('site')}look-up/`;

it('narrows down by part as one types, says how much is left, and gives everything back', async () => {
  const { page, complaints } = await openWatched(browser, address);
  const all = await page.locator('[data-find]:visible').count();
  await page.getByLabel('Find').fill('12ax7');
  expect(await page.locator('tr[data-find]:visible').first().innerText()).toContain('12AX7');
  expect(await page.locator('[data-find]:visible').count()).toBeLessThan(10);
  expect(await page.getByRole('status').innerText()).toMatch(/fits?\.$/);
  await page.getByLabel('Find').fill('no such thing at all');
  expect(await page.getByRole('status').innerText()).toContain('Nothing fits');
  await page.getByLabel('Find').fill('');
  expect(await page.locator('[data-find]:visible').count()).toBe(all);
  expect(complaints).toEqual([]);
  await page.context().close();
});

it('brings a symptom’s calculators, by keyboard alone', async () => {
  const { page } = await openWatched(browser, address);
  await page.getByLabel('Find').focus();
  await page.keyboard.type('chatters');
  await page.keyboard.press('Tab');
  for (let presses = 0; presses < 40; presses += 1) {
    const href = await page.evaluate(() => (document.activeElement as HTMLAnchorElement | null)?.href ?? '');
    if (href.includes('/calculators/coil-check/')) return void (await page.context().close());
    await page.keyboard.press('Tab');
  }
  expect.fail('the coil check was not reached');
});

it('reads in full without script, without a field that would do nothing', async () => {
  const { page } = await openWatched(browser, address, { javaScriptEnabled: false });
  expect(await page.locator('#find').isVisible()).toBe(false);
  expect(await page.locator('table:visible').count()).toBeGreaterThan(10);
  await page.context().close();
});
