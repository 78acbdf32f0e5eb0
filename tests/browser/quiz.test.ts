import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { ChoiceQuestion, Question } from '../../src/widgets/quiz/question.ts';
import { launchChromium } from './chromium.ts';
import { axeViolations, openWatched } from './watch.ts';

const LESSON = 'regulate-it';
const file = resolve(import.meta.dirname, `../../content/quizzes/${LESSON}.json`);
const { questions } = JSON.parse(readFileSync(file, 'utf8')) as { questions: Question[] };
const address = `${inject('site')}course/${LESSON}/`;

const isChoice = (question: Question): question is ChoiceQuestion => question.kind === 'one' || question.kind === 'several';
const single = questions.findIndex((question) => question.kind === 'one');
const unsafe = questions.findIndex((question) => question.kind === 'one' && question.options.some((option) => option.unsafe));

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** Opens the lesson and waits until its quiz answers. */
async function openQuiz(): Promise<{ page: Page; complaints: string[] }> {
  const opened = await openWatched(browser, address, { reducedMotion: 'reduce' });
  await opened.page.locator('.quiz').scrollIntoViewIfNeeded();
  await opened.page.locator('.quiz .quiz-check').first().waitFor();
  return opened;
}

/** Takes an option by keyboard alone and presses Check. */
async function answerByKeyboard(page: Page, question: number, option: number): Promise<void> {
  const fieldset = page.locator('.quiz fieldset').nth(question);
  await fieldset.locator('input').first().focus();
  for (let step = 0; step < option; step += 1) await page.keyboard.press('ArrowDown');
  if (option === 0) await page.keyboard.press('Space');
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Check');
  await page.keyboard.press('Enter');
}

describe('the quiz of a lesson', () => {
  it('shows every question with its answer foldable when there is no script', async () => {
    const { page } = await openWatched(browser, address, { javaScriptEnabled: false });
    expect(await page.locator('.quiz fieldset').count()).toBe(questions.length);
    expect(await page.locator('.quiz .quiz-check').count()).toBe(0);
    for (const [index, question] of questions.entries()) {
      const fold = page.locator('.quiz fieldset').nth(index).locator('details');
      await fold.locator('summary').click();
      expect(await fold.getAttribute('open')).not.toBeNull();
      if (isChoice(question)) expect(await fold.locator('.option-reason').count()).toBe(question.options.length);
    }
    await page.context().close();
  });

  it('is taken by keyboard: a right answer is called right and every option explained', async () => {
    const { page, complaints } = await openQuiz();
    const question = questions[single] as ChoiceQuestion;
    await answerByKeyboard(page, single, question.options.findIndex(({ correct }) => correct));
    const fieldset = page.locator('.quiz fieldset').nth(single);
    expect(await fieldset.getByRole('status').textContent()).toBe('Right.');
    expect(await fieldset.locator('.option-reason').count()).toBe(question.options.length);
    expect(await page.locator('.quiz-score').textContent()).toContain(`1 of ${questions.length} right`);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('shows what an unsafe choice would have done, with the sign, and stays accessible', async () => {
    const { page } = await openQuiz();
    const question = questions[unsafe] as ChoiceQuestion;
    const option = question.options.findIndex((entry) => entry.unsafe);
    await answerByKeyboard(page, unsafe, option);
    const fieldset = page.locator('.quiz fieldset').nth(unsafe);
    expect(await fieldset.getByRole('status').textContent()).toContain('Unsafe');
    expect(await fieldset.locator('.hazard .hazard-sign').count()).toBe(1);
    expect(await fieldset.locator('.hazard').textContent()).toContain('Instead:');
    expect(await axeViolations(page)).toEqual([]);
    await page.context().close();
  });

  it('asks for an answer before it judges', async () => {
    const { page } = await openQuiz();
    await page.locator('.quiz .quiz-check button').first().click();
    expect(await page.locator('.quiz fieldset').first().getByRole('status').textContent()).toMatch(/first|give|number|empty/i);
    expect(await page.locator('.quiz-score').count()).toBe(0);
    await page.context().close();
  });
});
