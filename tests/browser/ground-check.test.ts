import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { launchChromium } from './chromium.ts';
import { axeViolations, openWatched } from './watch.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const address = `${inject('site')}calculators/ground-check/`;
const answer = (page: Page): Promise<string | null> => page.locator('.answer').textContent();
const switchOf = (page: Page, name: RegExp) => page.locator('.ground-switch').and(page.getByRole('button', { name }));
const boxOf = (page: Page, name: string) => page.getByRole('checkbox', { name });
const settled = (page: Page): Promise<unknown> => page.waitForFunction(() => document.querySelector('.answer')?.getAttribute('aria-busy') === 'false');

describe('grounds on the drawing', () => {
  it('are switched by pointer, and the list follows; what flows is said beside both', async () => {
    const { page, complaints } = await openWatched(browser, address);
    await page.waitForSelector('.calculator-foot');
    expect(await answer(page)).toMatch(/hazard/);
    const tap = switchOf(page, /centre tap/);
    expect(await tap.getAttribute('aria-pressed')).toBe('true');
    expect(await page.locator('.drawing path.fault').count()).toBeGreaterThan(0);

    await tap.click();
    expect(await tap.getAttribute('aria-pressed')).toBe('false');
    expect(await boxOf(page, 'winding’s centre tap').isChecked()).toBe(false);
    await expect.poll(() => answer(page)).toMatch(/one ground, the rail’s negative/);
    await settled(page);
    expect(await page.locator('.drawing path.fault').count()).toBe(0);

    await boxOf(page, 'winding’s second end').check();
    expect(await switchOf(page, /second end/).getAttribute('aria-pressed')).toBe('true');
    await expect.poll(() => answer(page)).toMatch(/second end and the rail’s negative, \d+/);
    await settled(page);
    expect(await page.locator('.ways li[data-fault]').count()).toBe(2);
    expect(await axeViolations(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('are switched by keyboard', async () => {
    const { page, complaints } = await openWatched(browser, address);
    await page.waitForSelector('.calculator-foot');
    await switchOf(page, /rail’s positive/).focus();
    await page.keyboard.press('Space');
    await expect.poll(() => answer(page)).toMatch(/rail’s positive/);
    await page.keyboard.press('Enter');
    await expect.poll(() => answer(page)).not.toMatch(/rail’s positive/);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('are cured by one button, which hands the focus on', async () => {
    const { page, complaints } = await openWatched(browser, address);
    await page.waitForSelector('.calculator-foot');
    await page.getByRole('button', { name: 'Take off the chassis: winding’s centre tap' }).click();
    await expect.poll(() => answer(page)).toMatch(/one ground/);
    await expect.poll(() => page.locator('.cures').count()).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('ground-check-groundCentre');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('are solved on the page itself where there are no workers', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.addInitScript(() => {
      Object.defineProperty(window, 'Worker', { value: undefined });
    });
    await page.goto(address);
    await page.waitForSelector('.calculator-foot');
    await boxOf(page, 'winding’s centre tap').uncheck();
    await expect.poll(() => answer(page)).toMatch(/one ground/);
    await expect.poll(() => page.locator('.answer').getAttribute('aria-busy')).toBe('false');
    await context.close();
  });

  it('are shown with the fault where no script runs, with nothing that looks like a control', async () => {
    const { page } = await openWatched(browser, address, { javaScriptEnabled: false });
    expect(await page.locator('.drawing path.fault').count()).toBeGreaterThan(0);
    expect(await page.locator('.ground-switch[role=button]').count()).toBe(0);
    expect(await page.locator('.ways input:not([disabled])').count()).toBe(0);
    await page.context().close();
  });
});
