import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { CALCULATORS } from '../../src/widgets/registry.ts';
import type { FieldSet } from '../../src/widgets/shared/definition.ts';
import { launchChromium } from './chromium.ts';
import { axeViolations, openWatched } from './watch.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const site = inject('site');
const addressOf = (id: string): string => `${site}calculators/${id}/`;
const alive = (page: Page): Promise<unknown> => page.waitForSelector('.calculator-foot');
/** The worker, where there is one, has answered for the fields as they stand. */
const settled = (page: Page): Promise<unknown> => page.waitForFunction(() => document.querySelector('.answer')?.getAttribute('aria-busy') !== 'true');
const answer = (page: Page): Promise<string | null> => page.locator('.answer').textContent();
const valuesOf = (page: Page): Promise<string[]> =>
  page.locator('.calculator [data-field]').evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));

const firstQuantity = (fields: FieldSet): string => Object.entries(fields).find(([, field]) => field.kind === 'quantity')?.[0] ?? '';

describe.each(CALCULATORS.map(({ id, fields, question }) => ({ id, fields: fields as FieldSet, question })))('the $id calculator', ({ id, fields, question }) => {
  it('works by keyboard alone, and comes back from its own address', async () => {
    const { page, complaints } = await openWatched(browser, addressOf(id));
    await alive(page);
    const before = await answer(page);
    const reached = new Set<string>();
    const wanted = await page.locator('.calculator [data-field]').count();
    for (let presses = 0; presses < 300 && reached.size < wanted; presses += 1) {
      await page.keyboard.press('Tab');
      const field = await page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset['field']);
      if (field === undefined || reached.has(field)) continue;
      reached.add(field);
      if ((await page.evaluate(() => document.activeElement?.tagName)) === 'INPUT') await page.keyboard.press('ArrowUp');
    }
    expect(reached.size, 'every field is reached by Tab').toBe(wanted);
    // A worker may be in the middle of what was asked before.
    await expect.poll(() => answer(page), { timeout: 10_000 }).not.toBe(before);
    await settled(page);
    // The address is written once the reader pauses.
    await page.waitForTimeout(500);
    expect(new URL(page.url()).searchParams.has(id)).toBe(true);

    const [after, typed] = [await answer(page), await valuesOf(page)];
    await page.reload();
    await alive(page);
    await page.waitForFunction((text) => document.querySelector('.answer')?.textContent === text, after);
    expect(await valuesOf(page)).toEqual(typed);

    await page.getByRole('button', { name: 'Back to the worked case' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => answer(page), { timeout: 10_000 }).toBe(before);
    await page.waitForFunction(() => location.search === '');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('says what is wrong beside the field, in reach of a screen reader, and keeps the last good result', async () => {
    const { page, complaints } = await openWatched(browser, addressOf(id));
    await alive(page);
    const before = await answer(page);
    const field = page.locator('.calculator input[type=text][inputmode]').first();
    await field.fill('plenty');
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
    const described = (await field.getAttribute('aria-describedby'))?.split(' ')[0] ?? '';
    expect(await page.locator(`#${described}`).textContent()).toContain('between');
    expect(await answer(page)).toBe(before);
    await expect.poll(() => page.locator('.calculator .problem').textContent()).toContain('last case that could be solved');
    expect(await axeViolations(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('reads in full without JavaScript, as when alive', async () => {
    const { page } = await openWatched(browser, addressOf(id), { javaScriptEnabled: false });
    const still = { answer: await answer(page), values: await valuesOf(page) };
    expect(await page.locator('.calculator .question').textContent()).toBe(question);
    expect(await page.locator('.calculator .working li').count()).toBeGreaterThan(1);
    await page.context().close();
    const living = await openWatched(browser, addressOf(id));
    await alive(living.page);
    expect(await answer(living.page)).toBe(still.answer);
    expect(await valuesOf(living.page)).toEqual(still.values);
    await living.page.context().close();
  });

  it('takes any address', async () => {
    const first = firstQuantity(fields);
    const { page, complaints } = await openWatched(browser, addressOf(id));
    await page.waitForLoadState('networkidle');
    for (const text of ['', '0~', `1~${first}.%3Cimg%20src=x%20onerror=alert(1)%3E`, `1~${first}.1e999`, '1~__proto__.x', `1~${'a.b~'.repeat(3000)}`]) {
      await page.goto(`${addressOf(id)}?${id}=${text}&other=1`);
      await alive(page);
      expect(await page.locator('.calculator .answer').count()).toBe(1);
      expect(await page.locator('.calculator img').count()).toBe(0);
      // Leaving while the solver is on its way would count as a failed request.
      await page.waitForLoadState('networkidle');
    }
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('prints on one page, with its working', async () => {
    const { page } = await openWatched(browser, addressOf(id));
    await alive(page);
    const pdf = await page.pdf({ format: 'A4' });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);
    await page.context().close();
  });
});

describe('the dial', () => {
  it('is walked by arrow keys and says what carries current', async () => {
    const { page, complaints } = await openWatched(browser, addressOf('rectify'));
    await alive(page);
    const dial = page.getByRole('slider', { name: 'Place in the mains cycle' });
    await dial.focus();
    expect(await dial.getAttribute('aria-valuetext')).toMatch(/D1 and D4 carry/);
    await page.keyboard.press('Home');
    expect(await dial.getAttribute('aria-valuenow')).toBe('0');
    expect(await dial.getAttribute('aria-valuetext')).toMatch(/no diode carries current/);
    await page.keyboard.press('ArrowLeft');
    expect(Number(await dial.getAttribute('aria-valuenow'))).toBeGreaterThan(350);
    expect(await page.locator('.circuit desc').textContent()).toMatch(/reservoir feeds the load alone/);
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe('a calculator that fails', () => {
  it('says so, and leaves the rest of the page standing', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.addInitScript(() => {
      const observe = IntersectionObserver.prototype.observe;
      IntersectionObserver.prototype.observe = function (target: Element): void {
        if (target instanceof HTMLCanvasElement) throw new Error('broken on purpose');
        observe.call(this, target);
      };
    });
    await page.goto(addressOf('rectify'));
    await page.waitForSelector('.stopped');
    expect(await page.locator('.stopped').textContent()).toContain('has stopped');
    expect(await page.locator('h1').count()).toBe(1);
    expect(await page.locator('.answer').count(), 'no figure is left that could be taken for a result').toBe(0);
    await context.close();
  });
});
