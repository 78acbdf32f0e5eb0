/**
 * A fresh identifier: 128 random bits in hexadecimal. `crypto.randomUUID` exists on secure origins only, and a shop
 * may well serve this site to its phones from a plain address on the local network.
 */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
