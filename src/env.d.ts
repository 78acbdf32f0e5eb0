/// <reference types="astro/client" />

declare namespace App {
  interface Locals {
    /** Terms opened on this page so far: each popover needs an id of its own. */
    terms?: number;
  }
}

// For tsc alone, which does not read .astro files; `astro check` uses their own types.
declare module '*.astro' {
  import type { AstroComponentFactory } from 'astro/runtime/server/index.js';
  const component: AstroComponentFactory;
  export default component;
}
