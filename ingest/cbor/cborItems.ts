import { DecodeError } from '../decodeError.ts';

/** Numbers as items of their own take time, each: beyond these a sender takes typed arrays. */
const MOST_ITEMS = 2_000_000;
/** Instead of a length: the item goes on until its break. */
export const INDEFINITE = -1;
const BREAK = 0xff;
/** What is left of an item without length, beside numbers of items: of a map, that a name is next or its value. */
const UNTIL_BREAK = -1;
const NAME_NEXT = -2;
const VALUE_NEXT = -3;

/** What the first three bits of an item say that it is (RFC 8949, section 3.1). */
export const MAJOR = {
  unsigned: 0,
  negative: 1,
  bytes: 2,
  text: 3,
  array: 4,
  map: 5,
  tag: 6,
  simple: 7,
} as const;

/**
 * Goes through CBOR (RFC 8949, section 3) head by head, and holds declared lengths against the bytes there are. It
 * knows what is well-formed, and nothing of what it means. Throws `DecodeError` at the place that `pointer` tells where
 * the bytes are not well-formed, or hold more than anybody sends.
 */
export class CborItems {
  readonly view: DataView;
  at = 0;
  /** Of the head that was read last. */
  major = 0;
  info = 0;
  argument = 0;
  readonly #bytes: Uint8Array;
  readonly #mostNests: number;
  readonly #pointer: () => string;
  #items = 0;
  #nests = 0;

  constructor(bytes: Uint8Array, mostNests: number, pointer: () => string) {
    this.#bytes = bytes;
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
    this.#mostNests = mostNests;
    this.#pointer = pointer;
  }

  get left(): number {
    return this.#bytes.length - this.at;
  }

  fail(detail: string): never {
    throw DecodeError.at(this.#pointer(), `${detail} (at byte ${this.at}).`);
  }

  #count(): void {
    if (++this.#items > MOST_ITEMS) {
      this.fail(`More than ${MOST_ITEMS} items: send numbers as typed arrays (RFC 8746)`);
    }
  }

  /** Reads the head of the next item, and counts it. */
  next(): void {
    this.#count();
    this.head();
    if (this.major !== MAJOR.array && this.major !== MAJOR.map) return;
    if (++this.#nests > this.#mostNests) this.fail(`More than ${this.#mostNests} maps and arrays`);
    const bytes = this.major === MAJOR.map ? 2 * this.argument : this.argument;
    const what = this.major === MAJOR.map ? 'A map' : 'An array';
    if (bytes > this.left) this.fail(`${what} of ${this.argument} is declared; ${this.left} bytes follow`);
  }

  /** What the next item is, without reading it. */
  nextMajor(): number {
    if (this.left === 0) this.fail('The CBOR ends too early');
    return this.#bytes[this.at] >> 5;
  }

  /** Reads a head without counting it: of what is part of another item. */
  head(): void {
    this.major = this.nextMajor();
    this.info = this.#bytes[this.at++] & 31;
    this.argument = this.#argument(this.info);
    if (this.argument === INDEFINITE) this.#mustMayBeEndless();
    else if (this.major === MAJOR.simple && this.info === 24 && this.argument < 32) {
      this.fail('The CBOR is not well-formed: a simple value in two bytes');
    }
  }

  #mustMayBeEndless(): void {
    if (this.major === MAJOR.simple) this.fail('The CBOR is not well-formed: a break without a beginning');
    if (this.major >= MAJOR.bytes && this.major <= MAJOR.map) return;
    this.fail('The CBOR is not well-formed: a whole number or a tag without length');
  }

  /** The number that goes with an initial byte: a value, a length or a tag. */
  #argument(info: number): number {
    if (info < 24) return info;
    if (info === 31) return INDEFINITE;
    if (info > 27) this.fail('The CBOR is not well-formed: a reserved length');
    const size = 2 ** (info - 24);
    if (this.left < size) this.fail('The CBOR ends too early');
    const at = this.at;
    this.at += size;
    if (size === 1) return this.view.getUint8(at);
    if (size === 2) return this.view.getUint16(at);
    if (size === 4) return this.view.getUint32(at);
    return this.view.getUint32(at) * 2 ** 32 + this.view.getUint32(at + 4);
  }

  /** The whole number whose head was read last: beyond 2^53 a bigint. */
  wholeNumber(): number | bigint {
    const negative = this.major === MAJOR.negative;
    if (this.argument <= Number.MAX_SAFE_INTEGER) return negative ? -1 - this.argument : this.argument;
    const value = this.view.getBigUint64(this.at - 8);
    return negative ? -1n - value : value;
  }

  /**
   * Hands on the bytes of the string whose head was read last, piece by piece: each of its kind and of definite length.
   * They count as items, and none is kept here: a body of pieces of a byte would take a hundred times its size.
   */
  eachPiece(take: (piece: Uint8Array) => void): void {
    const { major } = this;
    if (this.argument !== INDEFINITE) {
      take(this.take(this.argument));
      return;
    }
    while (!this.atBreak()) {
      this.#count();
      this.head();
      if (this.major !== major || this.argument === INDEFINITE) {
        this.fail('The CBOR is not well-formed: a string in pieces of another kind');
      }
      take(this.take(this.argument));
    }
  }

  take(length: number): Uint8Array {
    if (length > this.left) this.fail(`A length of ${length} bytes is declared; ${this.left} follow`);
    this.at += length;
    return this.#bytes.subarray(this.at - length, this.at);
  }

  /** Whether the item without length ends here; its break is read then. */
  atBreak(): boolean {
    if (this.left === 0) this.fail('The CBOR ends too early');
    if (this.#bytes[this.at] !== BREAK) return false;
    this.at++;
    return true;
  }

  /** Passes over so many items with all that is in them. It does not call itself: they may be nested however deep. */
  skip(count = 1): void {
    const open = [count];
    while (open.length > 0) {
      const last = open.length - 1;
      if (open[last] === 0 || (open[last] < 0 && this.#endsHere(open[last]))) {
        open.pop();
        continue;
      }
      if (open[last] > 0) open[last]--;
      else if (open[last] !== UNTIL_BREAK) open[last] = open[last] === NAME_NEXT ? VALUE_NEXT : NAME_NEXT;
      do this.next();
      while (this.major === MAJOR.tag);
      if (this.major === MAJOR.bytes || this.major === MAJOR.text) this.eachPiece(() => undefined);
      else if (this.major === MAJOR.array) open.push(this.argument);
      else if (this.major === MAJOR.map)
        open.push(this.argument === INDEFINITE ? NAME_NEXT : 2 * this.argument);
    }
  }

  #endsHere(left: number): boolean {
    if (!this.atBreak()) return false;
    if (left === VALUE_NEXT) this.fail('The CBOR is not well-formed: a name without a value');
    return true;
  }
}
