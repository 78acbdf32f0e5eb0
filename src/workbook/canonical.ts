/**
 * One text for one content: JSON with the fields of every object in order of name, absent and `undefined` fields
 * alike left out. Two values are the same content exactly when their texts are equal. For plain JSON values only.
 */
export function canonicalText(value: unknown): string {
  return JSON.stringify(value, (_name, entry: unknown) => {
    if (typeof entry !== 'object' || entry === null || Array.isArray(entry)) return entry;
    return Object.fromEntries(Object.entries(entry).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}
