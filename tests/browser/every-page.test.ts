import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { launchChromium } from './chromium.ts';
import { builtPages } from './pages.ts';
import { axeViolations, openWatched } from './watch.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const site = inject('site');

describe('every page of the site', () => {
  it('exists', () => expect(builtPages().length).toBeGreaterThan(0));

  describe.each(builtPages())('/%s', (path) => {
    it('is accessible, keeps quiet and calls no other host, on a phone and on a wide screen, light and dark', async () => {
      for (const [width, colorScheme] of [
        [390, 'light'],
        [1280, 'dark'],
      ] as const) {
        const { page, complaints } = await openWatched(browser, site + path, {
          viewport: { width, height: 844 },
          colorScheme,
          reducedMotion: 'reduce',
        });
        expect(await axeViolations(page)).toEqual([]);
        const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect(sideways, `scrolls sideways at ${width} px`).toBeLessThanOrEqual(0);
        expect(complaints).toEqual([]);
        await page.context().close();
      }
    });

    it('has a title, one main heading, a description, and no link that leads nowhere', async () => {
      const { page } = await openWatched(browser, site + path);
      expect(await page.title()).toMatch(/Second Rail/);
      expect(await page.locator('h1').count()).toBe(1);
      expect(await page.locator('meta[name=description]').getAttribute('content')).toBeTruthy();
      const links = await page.locator('a[href]').evaluateAll((anchors) => anchors.map((a) => (a as HTMLAnchorElement).href));
      const dead: string[] = [];
      for (const link of new Set(links)) {
        const url = new URL(link);
        if (!url.href.startsWith(site)) continue;
        const answer = await fetchOnce(url.origin + url.pathname);
        if (answer.status !== 200) dead.push(link);
        else if (url.hash.length > 1 && !answer.ids.has(decodeURIComponent(url.hash.slice(1)))) dead.push(link);
      }
      expect(dead).toEqual([]);
      await page.context().close();
    });
  });
});

const fetched = new Map<string, Promise<{ status: number; ids: Set<string> }>>();
function fetchOnce(address: string): Promise<{ status: number; ids: Set<string> }> {
  let known = fetched.get(address);
  if (known === undefined) {
    known = fetch(address).then(async (response) => ({
      status: response.status,
      ids: new Set([...(await response.text()).matchAll(/\sid="?([^"\s>]+)/g)].map((match) => match[1] ?? '')),
    }));
    fetched.set(address, known);
  }
  return known;
}
