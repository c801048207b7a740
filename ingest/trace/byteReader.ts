import { CorruptTraceError } from './corruptTraceError.ts';

const LOW_24_BITS = 0x1000000;

/** Reads what `ByteWriter` wrote; throws `CorruptTraceError` past the end. */
export class ByteReader {
  readonly #bytes: Uint8Array;
  #at = 0;
  #held = 0;
  #heldBits = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
  }

  get left(): number {
    return this.#bytes.length - this.#at;
  }

  byte(): number {
    if (this.#at >= this.#bytes.length) throw this.#endsEarly(1);
    return this.#bytes[this.#at++];
  }

  raw(count: number): Uint8Array {
    if (count > this.left) throw this.#endsEarly(count);
    this.#at += count;
    return this.#bytes.subarray(this.#at - count, this.#at);
  }

  varint(): number {
    let value = 0;
    let weight = 1;
    for (;;) {
      const byte = this.byte();
      value += (byte & 127) * weight;
      if (byte < 128) return value;
      weight *= 128;
      if (weight > Number.MAX_SAFE_INTEGER)
        throw new CorruptTraceError(`the number that goes on at byte ${this.#at} is too long`);
    }
  }

  float64(): number {
    const bytes = this.raw(8);
    return new DataView(bytes.buffer, bytes.byteOffset, 8).getFloat64(0, true);
  }

  text(): string {
    return new TextDecoder('utf-8', { fatal: true }).decode(this.raw(this.varint()));
  }

  /** Up to 24 bits. */
  bits(count: number): number {
    while (this.#heldBits < count) {
      this.#held = ((this.#held << 8) | this.byte()) & 0x7fffffff;
      this.#heldBits += 8;
    }
    this.#heldBits -= count;
    const value = this.#held >>> this.#heldBits;
    this.#held &= (1 << this.#heldBits) - 1;
    return value;
  }

  /** Up to 48 bits. */
  longBits(count: number): number {
    if (count <= 24) return this.bits(count);
    const high = this.bits(count - 24);
    return high * LOW_24_BITS + this.bits(24);
  }

  /** The number of one bits before the next zero bit, which is read too; at `limit` of them it stops without it. */
  ones(limit: number): number {
    let count = 0;
    for (;;) {
      if (this.#heldBits === 0) {
        this.#held = this.byte();
        this.#heldBits = 8;
      }
      const leading = Math.min(
        Math.clz32(~(this.#held << (32 - this.#heldBits))),
        this.#heldBits,
        limit - count,
      );
      count += leading;
      const ended = count < limit && leading < this.#heldBits;
      this.#heldBits -= ended ? leading + 1 : leading;
      this.#held &= (1 << this.#heldBits) - 1;
      if (ended || count === limit) return count;
    }
  }

  /** Leaves out what is left of the last byte. */
  align(): void {
    this.#held = 0;
    this.#heldBits = 0;
  }

  #endsEarly(asked: number): CorruptTraceError {
    const { length } = this.#bytes;
    return new CorruptTraceError(
      `it ends after ${length} bytes, ${asked} more were to come at byte ${this.#at}`,
    );
  }
}
