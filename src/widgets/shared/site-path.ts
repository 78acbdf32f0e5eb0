/**
 * Address of a page of this site below whatever folder a host serves it from.
 * `path` is written from the site's root, leading slash included or not: `sitePath('glossary/#valley')`.
 */
export function sitePath(path = ''): string {
  const base = import.meta.env.BASE_URL;
  return `${base}${base.endsWith('/') ? '' : '/'}${path.replace(/^\/+/, '')}`;
}
