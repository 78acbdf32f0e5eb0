import type { Browser, Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { Question } from '../../src/widgets/quiz/question.ts';
import { hazardsShown } from '../content/checks/hazards.ts';
import { lessonFiles, readJson } from '../content/checks/lesson-files.ts';
import { workedOf } from '../content/checks/worked-modules.ts';
import { launchChromium } from './chromium.ts';
import { openWatched } from './watch.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const site = inject('site');
const addressOf = (slug: string): string => `${site}course/${slug}/`;
const questionsOf = (slug: string): readonly Question[] => readJson<{ questions: readonly Question[] }>(`content/quizzes/${slug}.json`).questions;

/** Brings an island into view and waits until it answers. */
async function wake(part: Locator): Promise<void> {
  await part.scrollIntoViewIfNeeded();
  await expect.poll(() => part.locator('xpath=ancestor::astro-island[1]').getAttribute('ssr')).toBeNull();
}

describe.each(lessonFiles.map(({ slug, source }) => [slug, source] as const))('lesson %s', (slug, source) => {
  it('reads in full without JavaScript: worked steps with their sums, hazards in the open, questions with their answers in folds', async () => {
    const { page, complaints } = await openWatched(browser, addressOf(slug), { javaScriptEnabled: false });
    const text = (await page.locator('main').textContent()) ?? '';
    const { steps } = await workedOf(slug);
    for (const { ask, sum } of steps) {
      expect(text).toContain(ask);
      expect(text).toContain(sum);
    }
    const hazards = page.locator('.lesson-body > .hazard');
    expect(await hazards.count()).toBe(hazardsShown(source).shown.length);
    for (let index = 0; index < (await hazards.count()); index += 1) expect(await hazards.nth(index).isVisible()).toBe(true);
    expect(await page.locator('.quiz fieldset').count()).toBe(questionsOf(slug).length);
    expect(await page.locator('.quiz details').count()).toBeGreaterThanOrEqual(questionsOf(slug).length);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('shows every figure: no gap, no name of one left in braces', async () => {
    const { page } = await openWatched(browser, addressOf(slug));
    const text = (await page.locator('main').innerText()).replace(/\s+/g, ' ');
    expect(text).not.toMatch(/\{\w+\}|undefined|NaN|\[object/);
    await page.context().close();
  });

  it('answers an unsafe choice, taken by keyboard, with what would have happened', async () => {
    const { page, complaints } = await openWatched(browser, addressOf(slug));
    const quiz = page.locator('.quiz');
    await wake(quiz);
    for (const [number, question] of questionsOf(slug).entries()) {
      if (question.kind !== 'one') continue;
      const unsafe = question.options.findIndex((option) => option.unsafe);
      if (unsafe < 0) continue;
      const fieldset = quiz.locator('fieldset').nth(number);
      await fieldset.getByRole('radio').nth(unsafe).focus();
      await page.keyboard.press('Space');
      await fieldset.getByRole('button', { name: 'Check' }).focus();
      await page.keyboard.press('Enter');
      await expect.poll(() => fieldset.locator('.hazard').count()).toBeGreaterThan(0);
      expect(await fieldset.locator('.hazard').first().isVisible()).toBe(true);
    }
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe('the dial of lesson 7', () => {
  it('walks the cycle by arrow keys and lights the diodes that carry', async () => {
    const { page } = await openWatched(browser, addressOf('rectify-and-store'));
    const knob = page.getByRole('slider', { name: 'Place in the mains cycle' }).first();
    await wake(knob);
    await expect.poll(() => knob.getAttribute('aria-valuetext')).toMatch(/carry/);
    const first = await knob.getAttribute('aria-valuetext');
    await knob.focus();
    for (let turn = 0; turn < 6; turn += 1) await page.keyboard.press('PageUp');
    await expect.poll(() => knob.getAttribute('aria-valuetext')).not.toBe(first);
    const half = (await knob.getAttribute('aria-valuetext')) ?? '';
    expect(half).toMatch(/carry/);
    expect(half.match(/D\d/g)).not.toEqual(first?.match(/D\d/g));
    await page.keyboard.press('Home');
    await expect.poll(() => knob.getAttribute('aria-valuetext')).toMatch(/no diode carries current/);
    await page.context().close();
  });
});
