import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**'],
    // A limit against hanging, not a measure of speed: that is the bench's.
    testTimeout: 120_000,
    // The browser journeys have a runner configuration of their own: they need a built site.
  },
});
