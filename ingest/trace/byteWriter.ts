const LOW_24_BITS = 0x1000000;

/** Writes bytes and bits, most significant bit first, into a buffer that grows. */
export class ByteWriter {
  #bytes = new Uint8Array(4096);
  #length = 0;
  #held = 0;
  #heldBits = 0;

  /** Makes room for so many more bytes, so that the writes after it need not look. */
  reserve(count: number): void {
    if (this.#length + count <= this.#bytes.length) return;
    const larger = new Uint8Array(Math.max(this.#bytes.length * 2, this.#length + count));
    larger.set(this.#bytes.subarray(0, this.#length));
    this.#bytes = larger;
  }

  byte(value: number): void {
    this.reserve(1);
    this.#bytes[this.#length++] = value;
  }

  raw(bytes: Uint8Array): void {
    this.reserve(bytes.length);
    this.#bytes.set(bytes, this.#length);
    this.#length += bytes.length;
  }

  /** A whole number from 0 to 2^53 - 1 in groups of seven bits, the lowest first (LEB128). */
  varint(value: number): void {
    let rest = value;
    while (rest >= 128) {
      this.byte((rest % 128) | 128);
      rest = Math.floor(rest / 128);
    }
    this.byte(rest);
  }

  float64(value: number): void {
    const bytes = new Uint8Array(8);
    new DataView(bytes.buffer).setFloat64(0, value, true);
    this.raw(bytes);
  }

  text(value: string): void {
    const bytes = new TextEncoder().encode(value);
    this.varint(bytes.length);
    this.raw(bytes);
  }

  /** Up to 24 bits. Room must have been reserved. */
  bits(value: number, count: number): void {
    this.#held = (this.#held << count) | value;
    this.#heldBits += count;
    while (this.#heldBits >= 8) {
      this.#heldBits -= 8;
      this.#bytes[this.#length++] = this.#held >>> this.#heldBits;
    }
    this.#held &= (1 << this.#heldBits) - 1;
  }

  /** Up to 48 bits. Room must have been reserved. */
  longBits(value: number, count: number): void {
    if (count <= 24) {
      this.bits(value, count);
      return;
    }
    this.bits(Math.floor(value / LOW_24_BITS), count - 24);
    this.bits(value % LOW_24_BITS, 24);
  }

  /** Fills the last byte with zeros: what follows begins on a byte. */
  align(): void {
    this.reserve(1);
    if (this.#heldBits > 0) this.bits(0, 8 - this.#heldBits);
  }

  /** The bytes written so far, a view: copy it before writing on. */
  written(): Uint8Array {
    return this.#bytes.subarray(0, this.#length);
  }
}
