import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Drives a real Chromium over the built site: `npm run build` first.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/browser/**/*.test.ts'],
    globalSetup: ['tests/browser/serve.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // Patience with a busy machine; nothing here measures speed.
    expect: { poll: { timeout: 20_000 } },
    maxWorkers: 2,
  },
});
