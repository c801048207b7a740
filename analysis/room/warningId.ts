import { createHash } from 'node:crypto';

/**
 * A UUID version 7 (RFC 9562, section 5.7) whose time is the opening stroke's and whose other bits follow from
 * `parts`, so that the same history always gives the same ids. `atMs` before 1970 counts as 0.
 */
export function warningId(atMs: number, parts: readonly (string | null)[]): string {
  const bytes = createHash('sha256').update(JSON.stringify(parts)).digest();
  bytes.writeUIntBE(Math.max(0, Math.floor(atMs)), 0, 6);
  bytes[6] = 0x70 | (bytes[6] & 0x0f);
  bytes[8] = 0x80 | (bytes[8] & 0x3f);
  const hex = bytes.toString('hex', 0, 16);
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}
