import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Everything about a page that nobody asked for: console messages, uncaught errors, requests to other hosts. */
export interface Watched {
  readonly page: Page;
  readonly complaints: string[];
}

/** Opens a page in a fresh context and notes every complaint the browser makes about it. */
export async function openWatched(browser: Browser, url: string, options: BrowserContextOptions = {}): Promise<Watched> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  const complaints: string[] = [];
  const host = new URL(url).host;
  page.on('console', (message) => complaints.push(`console ${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => complaints.push(`uncaught: ${error.message}`));
  page.on('requestfailed', (request) => complaints.push(`failed request: ${request.url()}`));
  page.on('request', (request) => {
    const target = new URL(request.url());
    if (!['data:', 'blob:'].includes(target.protocol) && target.host !== host) {
      complaints.push(`request to another host: ${request.url()}`);
    }
  });
  await page.goto(url, { waitUntil: 'load' });
  return { page, complaints };
}

interface AxeViolation {
  id: string;
  help: string;
  nodes: { target: unknown[]; failureSummary?: string }[];
}

/** Violations of WCAG 2.0–2.2 A and AA that axe finds on the page as it stands, in words. */
export async function axeViolations(page: Page): Promise<string[]> {
  // The page's own policy forbids foreign scripts; evaluating the source through the debugger is not one.
  await page.evaluate(axeSource);
  const violations = await page.evaluate(async (): Promise<AxeViolation[]> => {
    const axe = (globalThis as unknown as { axe: { run: (o: object) => Promise<{ violations: AxeViolation[] }> } }).axe;
    const result = await axe.run({
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    });
    return result.violations;
  });
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map((node) => `${id}: ${help} at ${JSON.stringify(node.target)} ${node.failureSummary ?? ''}`),
  );
}
