import { endianness } from 'node:os';
import { quadrupleFloat } from './quadrupleFloat.ts';

/**
 * The number arrays of RFC 8746, section 2.1: tags 64 to 87, whose low five bits are `f s e ll`: float, signed,
 * little-endian, and the length of a number. Left out are signed bytes in the order that they have none of (76,
 * reserved).
 */
const FIRST = 64;
const LAST = 87;
const LEFT_OUT = 76;

export const TYPED_ARRAY_TAGS: readonly number[] = Array.from(
  { length: LAST - FIRST + 1 },
  (_, i) => FIRST + i,
).filter((tag) => tag !== LEFT_OUT);

/** Bytes of one number: `2^(f + ll)`. */
export function bytesPerNumber(tag: number): number {
  return 2 ** (((tag >> 4) & 1) + (tag & 3));
}

/** Those that this machine has in the same order of bytes: nearly all are little-endian. */
const OURS: Readonly<Record<number, (new (bytes: ArrayBuffer) => ArrayLike<number>) | undefined>> =
  endianness() === 'LE'
    ? { 77: Int16Array, 78: Int32Array, 69: Uint16Array, 70: Uint32Array, 85: Float32Array, 86: Float64Array }
    : {};

/** The numbers of a typed array, the bytes of which are a whole number of them. What a double cannot hold is rounded to the nearest. */
export function readTypedArray(tag: number, bytes: Uint8Array): Float64Array {
  const size = bytesPerNumber(tag);
  const ours = OURS[tag];
  // A copy, as it may begin anywhere in the body. The engine then turns all numbers at once.
  if (ours !== undefined) return new Float64Array(new ours(new Uint8Array(bytes).buffer));
  const read = readerOf(tag, new DataView(bytes.buffer, bytes.byteOffset, bytes.length));
  const numbers = new Float64Array(Math.floor(bytes.length / size));
  for (let i = 0; i < numbers.length; i++) numbers[i] = read(i * size);
  return numbers;
}

function readerOf(tag: number, view: DataView): (at: number) => number {
  const float = (tag & 16) !== 0;
  const signed = (tag & 8) !== 0;
  const little = (tag & 4) !== 0;
  switch (bytesPerNumber(tag)) {
    case 1:
      return signed ? (at) => view.getInt8(at) : (at) => view.getUint8(at);
    case 2:
      if (float) return (at) => halfFloat(view.getUint16(at, little));
      return signed ? (at) => view.getInt16(at, little) : (at) => view.getUint16(at, little);
    case 4:
      if (float) return (at) => view.getFloat32(at, little);
      return signed ? (at) => view.getInt32(at, little) : (at) => view.getUint32(at, little);
    case 16:
      return (at) => quadrupleFloat(view, at, little);
    default:
      if (float) return (at) => view.getFloat64(at, little);
      return signed
        ? (at) => Number(view.getBigInt64(at, little))
        : (at) => Number(view.getBigUint64(at, little));
  }
}

/** IEEE 754 binary16 (RFC 8949, appendix D). */
export function halfFloat(bits: number): number {
  const sign = bits & 0x8000 ? -1 : 1;
  const exponent = (bits >> 10) & 0x1f;
  const mantissa = bits & 0x3ff;
  if (exponent === 0) return sign * mantissa * 2 ** -24;
  if (exponent === 31) return mantissa === 0 ? sign * Number.POSITIVE_INFINITY : Number.NaN;
  return sign * (1024 + mantissa) * 2 ** (exponent - 25);
}
