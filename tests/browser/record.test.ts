import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { ChoiceQuestion, Question } from '../../src/widgets/quiz/question.ts';
import { readJson } from '../content/checks/lesson-files.ts';
import { launchChromium } from './chromium.ts';
import { axeViolations, openWatched } from './watch.ts';

const LESSON = 'what-can-hurt-you';
const site = inject('site');
const { questions } = readJson<{ questions: Question[] }>(`content/quizzes/${LESSON}.json`);
const place = questions.findIndex((question) => question.kind === 'one' && question.options.some(({ unsafe }) => unsafe));
const question = questions[place] as ChoiceQuestion;
const option = question.options.findIndex(({ unsafe }) => unsafe);

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const fieldsetOf = (page: Page) => page.locator(`#question-${question.id}`);

async function wakeQuiz(page: Page): Promise<void> {
  await page.locator('.quiz').scrollIntoViewIfNeeded();
  await page.locator('.quiz .quiz-check').first().waitFor();
}

/** Chooses the unsafe option by keyboard and waits until it is kept. */
async function answerUnsafely(page: Page): Promise<void> {
  await wakeQuiz(page);
  await fieldsetOf(page).getByRole('radio').nth(option).focus();
  await page.keyboard.press('Space');
  await fieldsetOf(page).getByRole('button', { name: 'Check' }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => answersKept(page)).toBe(1);
}

const answersKept = (page: Page): Promise<number> => rowsKept(page, 'answers');

const rowsKept = (page: Page, store: string): Promise<number> =>
  page.evaluate(
    (name) =>
      new Promise<number>((resolve) => {
        const opening = indexedDB.open('second-rail-record');
        opening.onerror = () => { resolve(-1); };
        opening.onsuccess = () => {
          const database = opening.result;
          const count = database.transaction(name).objectStore(name).count();
          count.onsuccess = () => {
            database.close();
            resolve(count.result);
          };
        };
      }),
    store,
  );

describe('the record of learning', () => {
  it('takes the quiz up after a reload, shows the unsafe answer first, and goes through export, wipe and import', async () => {
    const { page, complaints } = await openWatched(browser, `${site}course/${LESSON}/`, { acceptDownloads: true });
    await answerUnsafely(page);
    await page.reload();
    await wakeQuiz(page);
    await expect.poll(() => fieldsetOf(page).getByRole('status').textContent()).toContain('Unsafe');
    expect(await fieldsetOf(page).getByRole('radio').nth(option).isChecked()).toBe(true);

    await page.goto(`${site}record/`);
    const first = page.locator('.record-list li').first();
    await first.waitFor();
    expect(await first.textContent()).toContain(question.options[option]?.text);
    expect(await first.getByRole('link').getAttribute('href')).toContain(`#question-${question.id}`);
    expect(await axeViolations(page)).toEqual([]);

    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Export' }).click()]);
    const text = readFileSync(await download.path(), 'utf8');
    await page.getByRole('button', { name: 'Erase everything' }).click();
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Keep it');
    await page.keyboard.press('Enter');
    expect(await answersKept(page)).toBe(1);
    await page.getByRole('button', { name: 'Erase everything' }).click();
    await page.getByRole('button', { name: 'Yes, erase it' }).click();
    await expect.poll(() => answersKept(page)).toBe(0);
    await expect.poll(() => page.locator('.record-list li').count()).toBe(0);

    await page.locator('input[type=file]').setInputFiles({ name: 'record.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    await expect.poll(() => answersKept(page)).toBe(1);
    await first.waitFor();
    await page.locator('input[type=file]').setInputFiles({ name: 'torn.json', mimeType: 'application/json', buffer: Buffer.from(text.slice(0, 40)) });
    await expect.poll(() => page.locator('.record-keeping [role=status]').textContent()).toContain('Nothing was taken');
    expect(await answersKept(page)).toBe(1);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('offers to go on from the course page', async () => {
    const { page } = await openWatched(browser, `${site}course/${LESSON}/`);
    await answerUnsafely(page);
    await expect.poll(() => rowsKept(page, 'lessons'), { timeout: 8000 }).toBe(1);
    await page.goto(`${site}course/`);
    const on = page.locator('#go-on a');
    await on.waitFor({ timeout: 8000 });
    expect(await on.getAttribute('href')).toContain(`course/${LESSON}/`);
    await page.context().close();
  });

  it('goes on answering without storage, and says so', async () => {
    const context = await browser.newContext();
    await context.addInitScript(() => { Object.defineProperty(globalThis, 'indexedDB', { value: undefined }); });
    const page = await context.newPage();
    await page.goto(`${site}course/${LESSON}/`);
    await wakeQuiz(page);
    await fieldsetOf(page).getByRole('radio').nth(option).check();
    await fieldsetOf(page).getByRole('button', { name: 'Check' }).click();
    await expect.poll(() => page.locator('.quiz-score').textContent()).toContain('does not let the site keep anything');
    await context.close();
  });

  it('says without script that it needs one', async () => {
    const { page } = await openWatched(browser, `${site}record/`, { javaScriptEnabled: false });
    expect(await page.locator('main').textContent()).toContain('needs script');
    await page.context().close();
  });
});
