import { DecodeError, pointerPart } from '../decodeError.ts';
import { MOST_RECORDS } from '../senml/resolve.ts';
import { bytesPerNumber, halfFloat, readTypedArray, TYPED_ARRAY_TAGS } from './typedArray.ts';

/** An array of strokes, a stroke, its sides, a side, its numbers: five, and a few more for tags. */
const MOST_DEPTH = 12;
/** Numbers as items of their own take time, each: beyond these a sender takes typed arrays. */
const MOST_ITEMS = 2_000_000;
/** Maps and arrays: of 500 strokes with all the sides that one may have; or the records of a SenML pack. */
const MOST_NESTS = { text: 20_000, 'text or label': MOST_RECORDS + 1 } as const;
const MOST_FIELDS = 64;
const LONGEST_KEY_BYTES = 256;
const INDEFINITE = -1;
const BREAK = 0xff;
const DATE_TIME_TAG = 0;
const SELF_DESCRIBED_TAG = 55_799;
const TYPED_ARRAYS = new Set(TYPED_ARRAY_TAGS);
const UTF8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
/** Names of fields and the like are as short as this, and of the lowest 128 characters. */
const SHORT_TEXT_BYTES = 40;

/** Which keys a map may have: text, or the small whole numbers too that SenML has for labels. */
export type KeyKind = 'text' | 'text or label';

/** A simple value that has no meaning here: nothing that any field may be. */
const NO_MEANING = Symbol('a simple value');

/**
 * What JSON would have been parsed into, from CBOR (RFC 8949, appendix C), in one pass: maps become objects, typed
 * arrays (RFC 8746) `Float64Array`, whole numbers beyond 2^53 bigints. What is hostile costs nothing: declared lengths
 * are held against the bytes there are; depth, items and fields have their bounds; keys are of one kind and come once;
 * only tags that a stroke has a use for may stand in it. `nameOf` turns labels into names where they are taken. Throws
 * `DecodeError` with the pointer to the fault.
 *
 * Our own, as a library's decoder would have to be preceded by a pass that checks all this, which took longer than
 * reading.
 */
export function decodeCbor(
  bytes: Uint8Array,
  keys: KeyKind = 'text',
  nameOf: (label: number) => string = String,
): unknown {
  return new Reader(bytes, keys, nameOf).whole();
}

class Reader {
  readonly #bytes: Uint8Array;
  readonly #view: DataView;
  readonly #keys: KeyKind;
  readonly #nameOf: (label: number) => string;
  readonly #path: (string | number)[] = [];
  #at = 0;
  #items = 0;
  #nests = 0;

  constructor(bytes: Uint8Array, keys: KeyKind, nameOf: (label: number) => string) {
    this.#nameOf = nameOf;
    this.#bytes = bytes;
    this.#view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
    this.#keys = keys;
  }

  whole(): unknown {
    const value = this.#item(0);
    if (this.#at < this.#bytes.length) this.#fail('Further bytes follow the end of the CBOR item');
    return value;
  }

  #fail(detail: string): never {
    const pointer = this.#path.map((part) => `/${pointerPart(String(part))}`).join('');
    throw DecodeError.at(pointer, `${detail} (at byte ${this.#at}).`);
  }

  #left(): number {
    return this.#bytes.length - this.#at;
  }

  #byte(): number {
    if (this.#at >= this.#bytes.length) this.#fail('The CBOR ends too early');
    return this.#bytes[this.#at++];
  }

  /** The number that goes with an initial byte: a value, a length or a tag. */
  #argument(info: number): number {
    if (info < 24) return info;
    if (info === 31) return INDEFINITE;
    if (info > 27) this.#fail('The CBOR is not well-formed: a reserved length');
    const size = 2 ** (info - 24);
    if (this.#left() < size) this.#fail('The CBOR ends too early');
    const at = this.#at;
    this.#at += size;
    if (size === 1) return this.#view.getUint8(at);
    if (size === 2) return this.#view.getUint16(at);
    if (size === 4) return this.#view.getUint32(at);
    return this.#view.getUint32(at) * 2 ** 32 + this.#view.getUint32(at + 4);
  }

  #item(depth: number): unknown {
    if (depth > MOST_DEPTH) this.#fail(`Nested more than ${MOST_DEPTH} deep`);
    if (++this.#items > MOST_ITEMS) {
      this.#fail(`More than ${MOST_ITEMS} items: send numbers as typed arrays (RFC 8746)`);
    }
    const initial = this.#byte();
    const info = initial & 31;
    const argument = this.#argument(info);
    const major = initial >> 5;
    if ((major === 4 || major === 5) && ++this.#nests > MOST_NESTS[this.#keys]) {
      this.#fail(`More than ${MOST_NESTS[this.#keys]} maps and arrays`);
    }
    switch (major) {
      case 0:
      case 1:
        if (argument === INDEFINITE) this.#fail('The CBOR is not well-formed: a whole number without length');
        if (argument > Number.MAX_SAFE_INTEGER) return this.#largeNumber(major);
        return major === 0 ? argument : -1 - argument;
      case 2:
        return this.#byteString(argument);
      case 3:
        return this.#text(argument);
      case 4:
        return this.#array(argument, depth);
      case 5:
        return this.#map(argument, depth);
      case 6:
        return this.#tag(argument, depth);
      default:
        return this.#simple(info, argument);
    }
  }

  /** The whole number whose eight bytes were just read. */
  #largeNumber(major: 0 | 1): bigint {
    const value = this.#view.getBigUint64(this.#at - 8);
    return major === 0 ? value : -1n - value;
  }

  #simple(info: number, argument: number): unknown {
    switch (info) {
      case 20:
      case 21:
        return info === 21;
      case 22:
        return null;
      case 23:
        return undefined;
      case 25:
        return halfFloat(argument);
      case 26:
        return this.#view.getFloat32(this.#at - 4);
      case 27:
        return this.#view.getFloat64(this.#at - 8);
      case 31:
        return this.#fail('The CBOR is not well-formed: a break without a beginning');
      default:
        if (info === 24 && argument < 32) {
          this.#fail('The CBOR is not well-formed: a simple value in two bytes');
        }
        return NO_MEANING;
    }
  }

  #byteString(length: number): Uint8Array {
    const pieces = this.#pieces(2, length);
    return pieces.length === 1 ? pieces[0] : Buffer.concat(pieces);
  }

  #text(length: number): string {
    return this.#pieces(3, length)
      .map((piece) => this.#utf8(piece))
      .join('');
  }

  /** Of a string in pieces each is of the same kind and of definite length. */
  #pieces(kind: number, length: number): Uint8Array[] {
    if (length !== INDEFINITE) return [this.#take(length)];
    const pieces: Uint8Array[] = [];
    while (!this.#atBreak()) {
      const initial = this.#byte();
      if (initial >> 5 !== kind || (initial & 31) === 31) {
        this.#fail('The CBOR is not well-formed: a string in pieces of another kind');
      }
      const piece = this.#take(this.#argument(initial & 31));
      if (piece.length > 0) pieces.push(piece);
    }
    return pieces;
  }

  #take(length: number): Uint8Array {
    if (length > this.#left()) this.#fail(`A length of ${length} bytes is declared; ${this.#left()} follow`);
    this.#at += length;
    return this.#bytes.subarray(this.#at - length, this.#at);
  }

  #atBreak(): boolean {
    if (this.#left() === 0) this.#fail('The CBOR ends too early');
    if (this.#bytes[this.#at] !== BREAK) return false;
    this.#at++;
    return true;
  }

  #array(length: number, depth: number): unknown[] {
    if (length > this.#left()) this.#fail(`An array of ${length} is declared; ${this.#left()} bytes follow`);
    const place = this.#path.length;
    const items: unknown[] = [];
    for (let i = 0; length === INDEFINITE ? !this.#atBreak() : i < length; i++) {
      this.#path[place] = i;
      items.push(this.#item(depth + 1));
    }
    this.#path.length = place;
    return items;
  }

  #map(length: number, depth: number): Record<string, unknown> {
    if (2 * length > this.#left()) this.#fail(`A map of ${length} is declared; ${this.#left()} bytes follow`);
    if (length > MOST_FIELDS) this.#fail(`A map of more than ${MOST_FIELDS} fields`);
    const place = this.#path.length;
    const fields = new Map<string, unknown>();
    const seen = new Set<string | number>();
    for (let i = 0; length === INDEFINITE ? !this.#atBreak() : i < length; i++) {
      if (i >= MOST_FIELDS) this.#fail(`A map of more than ${MOST_FIELDS} fields`);
      const key = this.#key();
      this.#path[place] = key;
      if (seen.has(key)) this.#fail('This field comes twice');
      seen.add(key);
      const name = typeof key === 'number' ? this.#nameOf(key) : key;
      if (fields.has(name)) this.#fail('This field comes twice, by its label and by its name');
      fields.set(name, this.#item(depth + 1));
      this.#path.length = place;
    }
    // `__proto__` becomes a field like any other.
    return Object.fromEntries(fields);
  }

  #key(): string | number {
    const initial = this.#byte();
    const major = initial >> 5;
    const argument = this.#argument(initial & 31);
    if (major <= 1 && argument !== INDEFINITE && argument < 100 && this.#keys === 'text or label') {
      return major === 0 ? argument : -1 - argument;
    }
    if (major !== 3 || argument === INDEFINITE)
      this.#fail('The keys of a map must be text of definite length');
    if (argument > LONGEST_KEY_BYTES) this.#fail('A key is too long');
    return this.#utf8(this.#take(argument));
  }

  #utf8(bytes: Uint8Array): string {
    // A decoder is slow to begin.
    if (bytes.length <= SHORT_TEXT_BYTES && bytes.every((byte) => byte < 128)) {
      return String.fromCharCode(...bytes);
    }
    try {
      return UTF8.decode(bytes);
    } catch {
      return this.#fail('The text is not UTF-8');
    }
  }

  #tag(tag: number, depth: number): unknown {
    if (tag === SELF_DESCRIBED_TAG || tag === DATE_TIME_TAG) return this.#item(depth + 1);
    if (!TYPED_ARRAYS.has(tag)) this.#fail(`Tag ${tag} has no meaning here`);
    const initial = this.#byte();
    const length = this.#argument(initial & 31);
    if (initial >> 5 !== 2 || length === INDEFINITE) {
      this.#fail('A typed array must be one byte string of definite length');
    }
    const bytes = this.#take(length);
    if (length % bytesPerNumber(tag) !== 0) this.#fail('A typed array holds no whole number of numbers');
    return readTypedArray(tag, bytes);
  }
}
