/** Bytes as text that may stand in an address (RFC 4648, section 5, without padding). */
export function toBase64Url(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** The bytes again, or `undefined` when the text holds another character or cannot have this length. */
export function fromBase64Url(text: string): Uint8Array<ArrayBuffer> | undefined {
  if (!/^[\w-]*$/.test(text) || text.length % 4 === 1) return undefined;
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (character) => character.charCodeAt(0));
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let remainder = byte;
  for (let bit = 0; bit < 8; bit += 1) remainder = remainder & 1 ? (remainder >>> 1) ^ 0xedb88320 : remainder >>> 1;
  return remainder;
});

/** CRC-32 (ISO/IEC 3309, the polynomial of Ethernet) as eight hexadecimal digits: finds cut and mistyped links. */
export function checksumOf(bytes: Uint8Array): string {
  let remainder = 0xffffffff;
  for (const byte of bytes) remainder = (CRC_TABLE[(remainder ^ byte) & 0xff] ?? 0) ^ (remainder >>> 8);
  return ((remainder ^ 0xffffffff) >>> 0).toString(16).padStart(8, '0');
}

async function collect(stream: ReadableStream<Uint8Array>, limit: number): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const reader = stream.getReader();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > limit) {
      await reader.cancel().catch(() => undefined);
      return undefined;
    }
    chunks.push(value);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

const through = (bytes: Uint8Array<ArrayBuffer>, transform: ReadableWritablePair<Uint8Array, BufferSource>): ReadableStream<Uint8Array> =>
  new Blob([bytes]).stream().pipeThrough(transform as ReadableWritablePair<Uint8Array, Uint8Array>);

/** Deflated bytes (RFC 1951). */
export async function deflate(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  const packed = await collect(through(bytes, new CompressionStream('deflate-raw')), Infinity);
  return packed ?? new Uint8Array();
}

/**
 * The bytes before deflating; `undefined` as soon as they are more than `limit`, before the rest is unpacked.
 * Rejects when the bytes are no deflate stream.
 */
export function inflate(bytes: Uint8Array<ArrayBuffer>, limit: number): Promise<Uint8Array<ArrayBuffer> | undefined> {
  return collect(through(bytes, new DecompressionStream('deflate-raw')), limit);
}
