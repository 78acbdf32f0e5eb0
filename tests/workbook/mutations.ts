/** A repeatable stream of whole numbers (xorshift, 32 bits). */
export function seededNumbers(seed: number): (below: number) => number {
  let state = seed >>> 0 || 1;
  return (below) => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state % below;
  };
}

const SPLICES = ['"', '{', '}', '[', ']', ',', ':', '\\', '\\u0000', '-', '1e999', 'null', 'true', '"__proto__":{"polluted":1},', '"constructor":{"prototype":{"polluted":1}},',
  '"toString":1,', '<script>globalThis.ran=1</script>', "javascript:globalThis.ran=1", '\u0000', '\uD800', '\u202E', '%', '%2', '9'.repeat(400), '[[[[[[[['];

/** The text with one to four edits of the kinds that accidents and attackers make. */
export function mutate(text: string, pick: (below: number) => number): string {
  let result = text;
  for (let edits = 1 + pick(4); edits > 0; edits -= 1) {
    const at = pick(result.length + 1);
    const length = 1 + pick(12);
    const splice = SPLICES[pick(SPLICES.length)] ?? '';
    const kinds = [
      () => result.slice(0, at) + result.slice(at + length),
      () => result.slice(0, at) + splice + result.slice(at),
      () => result.slice(0, at) + splice + result.slice(at + length),
      () => result.slice(0, at) + String.fromCharCode(32 + pick(95)) + result.slice(at + 1),
      () => result.slice(0, at) + result.slice(at, at + length * 8) + result.slice(at),
      () => (pick(4) === 0 ? result.slice(0, at) : result),
      () => {
        const [one = '', two = ''] = [result[at], result[at + 1]];
        return result.slice(0, at) + two + one + result.slice(at + 2);
      },
    ];
    result = kinds[pick(kinds.length)]?.() ?? result;
  }
  return result;
}
