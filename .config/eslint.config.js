import astro from 'eslint-plugin-astro';
import { defineConfig } from 'eslint/config';
import tseslint from 'typescript-eslint';

export default defineConfig(
  { ignores: ['dist/**', '.astro/**', 'node_modules/**'] },
  ...tseslint.configs.strict,
  ...astro.configs.recommended,
  {
    rules: {
      eqeqeq: ['error', 'always'],
      'no-console': 'error',
      // Leaving a field out by naming it is how a copy without it is made.
      '@typescript-eslint/no-unused-vars': ['error', { ignoreRestSiblings: true }],
      'no-implied-eval': 'error',
      'prefer-const': 'error',
      'object-shorthand': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
    },
  },
  {
    files: ['src/**/*.astro', '.astro/**'],
    rules: { 'astro/no-set-html-directive': 'error' },
  },
  {
    // These print to a terminal: that is their job.
    files: ['tests/bench/**', 'tests/shop/**'],
    rules: { 'no-console': 'off' },
  },
);
