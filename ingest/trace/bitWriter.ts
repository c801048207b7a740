const LOW_24_BITS = 0x1000000;

/**
 * Writes bits, most significant first, into space that the caller has made large enough. Its fields are plain and few:
 * it runs for every sample that is stored.
 */
export class BitWriter {
  readonly bytes: Uint8Array;
  /** Whole bytes written. */
  length = 0;
  held = 0;
  heldBits = 0;

  constructor(space: Uint8Array) {
    this.bytes = space;
  }

  /** Up to 24 bits. */
  bits(value: number, count: number): void {
    let held = (this.held << count) | value;
    let heldBits = this.heldBits + count;
    if (heldBits >= 16) {
      this.bytes[this.length] = held >>> (heldBits - 8);
      this.bytes[this.length + 1] = held >>> (heldBits - 16);
      this.length += 2;
      heldBits -= 16;
    }
    if (heldBits >= 8) {
      heldBits -= 8;
      this.bytes[this.length++] = held >>> heldBits;
    }
    held &= (1 << heldBits) - 1;
    this.held = held;
    this.heldBits = heldBits;
  }

  /** Up to 48 bits. */
  longBits(value: number, count: number): void {
    if (count <= 24) {
      this.bits(value, count);
      return;
    }
    this.bits(Math.floor(value / LOW_24_BITS), count - 24);
    this.bits(value % LOW_24_BITS, 24);
  }

  /** So many ones, then a zero. */
  ones(count: number): void {
    let left = count;
    for (; left >= 16; left -= 16) this.bits(0xffff, 16);
    this.bits((1 << (left + 1)) - 2, left + 1);
  }

  /** Fills the last byte with zeros. */
  align(): void {
    if (this.heldBits > 0) this.bits(0, 8 - this.heldBits);
  }
}
