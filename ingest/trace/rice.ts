import { BitWriter } from './bitWriter.ts';
import type { ByteReader } from './byteReader.ts';
import type { ByteWriter } from './byteWriter.ts';

/**
 * Rice codes (R. F. Rice, 1979, "Some practical universal noiseless coding techniques") with a parameter for each
 * block of 128 numbers: the current of a motor is quiet at rest and noisy in motion, and one parameter fits neither.
 *
 * A number `u` is `floor(u / 2^k)` ones, a zero, and its low `k` bits. Twenty ones in a row, without a zero, say
 * that the number follows in 48 plain bits. Each block begins with its parameter, as the zigzag difference from the
 * parameter before it in ones and a zero; the parameter -1 says that the whole block is zero.
 */
const BLOCK = 128;
const ESCAPE = 20;
const PLAIN_BITS = 48;
const MOST = 47;
/** What a writer takes at once. */
const SHORT_BITS = 24;
const SMALL = 2 ** 30;
const FIRST_PARAMETER = 4;
/**
 * `2 ** k` and its inverse, looked up: the engine may work a power out anew for every sample of a block, which then
 * takes several times as long as all the rest.
 */
const POWERS = Float64Array.from({ length: MOST + 1 }, (_, k) => 2 ** k);
const INVERSES = POWERS.map((power) => 1 / power);
/** Of a number: its escape and 48 bits. */
const MOST_BYTES = 9;
/** The parameters of a series of fewer than a block, and the last byte. */
const MOST_PARAMETER_BYTES = 32;
/** A difference of parameters is at most 48 either way. */
const MOST_PARAMETER_ONES = 2 * (MOST + 2);

/** Whole numbers from 0 to 2^48 - 1. */
export function writeRice(writer: ByteWriter, numbers: Float64Array): void {
  const bits = new BitWriter(writer.space(numbers.length * MOST_BYTES + MOST_PARAMETER_BYTES));
  let before = FIRST_PARAMETER;
  for (let from = 0; from < numbers.length; from += BLOCK) {
    const to = Math.min(from + BLOCK, numbers.length);
    const k = bestParameter(numbers, from, to);
    bits.ones(k >= before ? 2 * (k - before) : 2 * (before - k) - 1);
    before = k;
    if (k >= 0) writeBlock(bits, numbers, from, to, k);
  }
  bits.align();
  writer.advance(bits.length);
}

function writeBlock(bits: BitWriter, numbers: Float64Array, from: number, to: number, k: number): void {
  const mask = (1 << k) - 1;
  for (let i = from; i < to; i++) {
    const u = numbers[i];
    const length = k + 1 + (u < SMALL ? (u | 0) >>> k : SHORT_BITS);
    // Nearly always: the ones, their zero and the rest at once. The other cases stand apart, or the engine would
    // spend its allowance for inlining on them.
    if (length <= SHORT_BITS && length - k <= ESCAPE)
      bits.bits((((1 << (length - k)) - 2) << k) | (u & mask), length);
    else writeLong(bits, u, k);
  }
}

function writeLong(bits: BitWriter, u: number, k: number): void {
  const divisor = POWERS[k];
  const quotient = Math.floor(u / divisor);
  if (quotient >= ESCAPE) {
    bits.bits((1 << ESCAPE) - 1, ESCAPE);
    bits.longBits(u, PLAIN_BITS);
  } else {
    bits.ones(quotient);
    bits.longBits(u - quotient * divisor, k);
  }
}

export function readRice(reader: ByteReader, count: number): Float64Array {
  const numbers = new Float64Array(count);
  let k = FIRST_PARAMETER;
  for (let from = 0; from < count; from += BLOCK) {
    const to = Math.min(from + BLOCK, count);
    const step = reader.ones(MOST_PARAMETER_ONES);
    k += step % 2 === 0 ? step / 2 : -(step + 1) / 2;
    if (k < 0) continue;
    const divisor = POWERS[k];
    for (let i = from; i < to; i++) {
      const quotient = reader.ones(ESCAPE);
      if (quotient === ESCAPE) numbers[i] = reader.longBits(PLAIN_BITS);
      else numbers[i] = k === 0 ? quotient : quotient * divisor + reader.longBits(k);
    }
  }
  reader.align();
  return numbers;
}

/** The parameter with the fewest bits: the cost is convex in it, so walk downhill from near the mean. */
function bestParameter(numbers: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += numbers[i];
  if (sum === 0) return -1;
  // A small integer to the engine too, not a double that happens to be whole: all that follows is ten times as fast.
  let k = Math.min(MOST, Math.max(0, Math.log2((0.7 * sum) / (to - from) + 1))) | 0;
  let cost = bitsWith(numbers, from, to, k);
  for (const step of [1, -1]) {
    for (;;) {
      const next = k + step;
      if (next < 0 || next > MOST) break;
      const nextCost = bitsWith(numbers, from, to, next);
      if (nextCost >= cost) break;
      cost = nextCost;
      k = next;
    }
  }
  return k;
}

function bitsWith(numbers: Float64Array, from: number, to: number, k: number): number {
  const scale = INVERSES[k];
  let bits = 0;
  for (let i = from; i < to; i++) {
    const quotient = Math.floor(numbers[i] * scale);
    bits += quotient >= ESCAPE ? ESCAPE + PLAIN_BITS : quotient + 1 + k;
  }
  return bits;
}
