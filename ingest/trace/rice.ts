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
const FIRST_PARAMETER = 4;
/** A difference of parameters is at most 48 either way. */
const MOST_PARAMETER_ONES = 2 * (MOST + 2);

/** Whole numbers from 0 to 2^48 - 1. */
export function writeRice(writer: ByteWriter, numbers: Float64Array): void {
  let before = FIRST_PARAMETER;
  for (let from = 0; from < numbers.length; from += BLOCK) {
    const to = Math.min(from + BLOCK, numbers.length);
    const k = bestParameter(numbers, from, to);
    writer.reserve((to - from) * 10 + 16);
    writeOnes(writer, k >= before ? 2 * (k - before) : 2 * (before - k) - 1);
    before = k;
    if (k < 0) continue;
    const divisor = 2 ** k;
    for (let i = from; i < to; i++) {
      const u = numbers[i];
      const quotient = Math.floor(u / divisor);
      if (quotient >= ESCAPE) {
        writer.bits((1 << ESCAPE) - 1, ESCAPE);
        writer.longBits(u, PLAIN_BITS);
      } else {
        writer.bits((1 << (quotient + 1)) - 2, quotient + 1);
        if (k > 0) writer.longBits(u - quotient * divisor, k);
      }
    }
  }
  writer.align();
}

export function readRice(reader: ByteReader, count: number): Float64Array {
  const numbers = new Float64Array(count);
  let k = FIRST_PARAMETER;
  for (let from = 0; from < count; from += BLOCK) {
    const to = Math.min(from + BLOCK, count);
    const step = reader.ones(MOST_PARAMETER_ONES);
    k += step % 2 === 0 ? step / 2 : -(step + 1) / 2;
    if (k < 0) continue;
    const divisor = 2 ** k;
    for (let i = from; i < to; i++) {
      const quotient = reader.ones(ESCAPE);
      numbers[i] =
        quotient === ESCAPE
          ? reader.longBits(PLAIN_BITS)
          : quotient * divisor + (k > 0 ? reader.longBits(k) : 0);
    }
  }
  reader.align();
  return numbers;
}

function writeOnes(writer: ByteWriter, count: number): void {
  let left = count;
  for (; left >= 16; left -= 16) writer.bits(0xffff, 16);
  writer.bits((1 << (left + 1)) - 2, left + 1);
}

/** The parameter with the fewest bits: the cost is convex in it, so walk downhill from near the mean. */
function bestParameter(numbers: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += numbers[i];
  if (sum === 0) return -1;
  let k = Math.min(MOST, Math.max(0, Math.floor(Math.log2((0.7 * sum) / (to - from) + 1))));
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
  const scale = 2 ** -k;
  let bits = 0;
  for (let i = from; i < to; i++) {
    const quotient = Math.floor(numbers[i] * scale);
    bits += quotient >= ESCAPE ? ESCAPE + PLAIN_BITS : quotient + 1 + k;
  }
  return bits;
}
