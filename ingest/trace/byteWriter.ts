/** Writes bytes into a buffer that grows. */
export class ByteWriter {
  #bytes = new Uint8Array(4096);
  #length = 0;

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

  /** Space for at most so many bytes, to be filled by other hands; say with `advance` how many it took. */
  space(count: number): Uint8Array {
    this.reserve(count);
    return this.#bytes.subarray(this.#length, this.#length + count);
  }

  advance(count: number): void {
    this.#length += count;
  }

  /** The bytes written so far, a view: copy it before writing on. */
  written(): Uint8Array {
    return this.#bytes.subarray(0, this.#length);
  }
}
