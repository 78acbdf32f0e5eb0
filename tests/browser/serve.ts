import { preview } from 'astro';
import type { TestProject } from 'vitest/node';
import { findChromium } from './chromium.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address of the built site, ending in a slash. */
    site: string;
  }
}

/** Serves the built site once for all browser tests, on a port of the system's choice. */
export default async function serve(project: TestProject): Promise<() => Promise<void>> {
  findChromium();
  const server = await preview({ root: project.config.root, server: { port: 0, host: '127.0.0.1' }, logLevel: 'error' });
  project.provide('site', `http://127.0.0.1:${server.port}/`);
  return () => server.stop();
}
