import mdx from '@astrojs/mdx';
import preact from '@astrojs/preact';
import { defineConfig } from 'astro/config';

// A host that serves the site below a folder sets BASE_PATH when building; SITE_URL is for the canonical address.
const { BASE_PATH: base = '/', SITE_URL: site } = process.env;

export default defineConfig({
  ...(site ? { site } : {}),
  base,
  output: 'static',
  trailingSlash: 'always',
  build: { format: 'directory', inlineStylesheets: 'never' },
  integrations: [mdx(), preact()],
  // No lesson shows program code, and a highlighter's inline styles would offend the policy below.
  markdown: { syntaxHighlight: false },
  devToolbar: { enabled: false },
  security: {
    // Scripts and styles are allowed by their hashes only. The meta element cannot carry frame-ancestors:
    // a host sends that as a header (DEVELOPERS.md lists the headers).
    csp: {
      directives: [
        "default-src 'self'",
        "img-src 'self' data:",
        "font-src 'self'",
        "connect-src 'self'",
        "worker-src 'self'",
        "manifest-src 'self'",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'none'",
      ],
    },
  },
});
