const LONGEST_BYTES = 8;

/** A whole number by its bytes, the highest first (RFC 8949, section 3.4.3); null for one beyond 64 bits. */
export function bignum(bytes: Uint8Array, isNegative: boolean): number | bigint | null {
  const significant = bytes.subarray(
    Math.max(
      0,
      bytes.findIndex((byte) => byte !== 0),
    ),
  );
  if (significant.length > LONGEST_BYTES) return null;
  let magnitude = 0n;
  for (const byte of significant) magnitude = magnitude * 256n + BigInt(byte);
  const whole = isNegative ? -1n - magnitude : magnitude;
  return Number.isSafeInteger(Number(whole)) ? Number(whole) : whole;
}
