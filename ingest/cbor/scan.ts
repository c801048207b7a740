import { DecodeError, pointerPart } from '../decodeError.ts';
import { MOST_RECORDS } from '../senml/resolve.ts';
import { bytesPerNumber, TYPED_ARRAY_TAGS } from './typedArray.ts';

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
const UTF8 = new TextDecoder('utf-8', { fatal: true });

/** Which keys a map may have: text, or the small whole numbers too that SenML has for labels. */
export type KeyKind = 'text' | 'text or label';

/**
 * Walks through CBOR (RFC 8949, appendix C) before anything is made of it, so that what is hostile costs nothing:
 * declared lengths are held against the bytes there are; depth, items and fields have their bounds; keys are of one
 * kind and come once; only tags that a stroke has a use for may stand in it. Throws `DecodeError` with the pointer to
 * the fault.
 */
export function scanCbor(bytes: Uint8Array, keys: KeyKind): void {
  new Scan(bytes, keys).whole();
}

class Scan {
  readonly #bytes: Uint8Array;
  readonly #view: DataView;
  readonly #keys: KeyKind;
  readonly #path: (string | number)[] = [];
  #at = 0;
  #items = 0;
  #nests = 0;

  constructor(bytes: Uint8Array, keys: KeyKind) {
    this.#bytes = bytes;
    this.#view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
    this.#keys = keys;
  }

  whole(): void {
    this.#item(0);
    if (this.#at < this.#bytes.length) this.#fail('Further bytes follow the end of the CBOR item');
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

  #item(depth: number): void {
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
        break;
      case 2:
      case 3:
        this.#string(major, argument);
        break;
      case 4:
        this.#array(argument, depth);
        break;
      case 5:
        this.#map(argument, depth);
        break;
      case 6:
        this.#tag(argument, depth);
        break;
      default:
        if (info === 31) this.#fail('The CBOR is not well-formed: a break without a beginning');
        if (info === 24 && argument < 32)
          this.#fail('The CBOR is not well-formed: a simple value in two bytes');
    }
  }

  /** Of a string in pieces each is of the same kind and of definite length. Answers the bytes in it. */
  #string(kind: number, length: number): void {
    if (length !== INDEFINITE) this.#skip(length);
    while (length === INDEFINITE && !this.#atBreak()) {
      const initial = this.#byte();
      if (initial >> 5 !== kind || (initial & 31) === 31) {
        this.#fail('The CBOR is not well-formed: a string in pieces of another kind');
      }
      this.#skip(this.#argument(initial & 31));
    }
  }

  #skip(length: number): void {
    if (length > this.#left()) this.#fail(`A length of ${length} bytes is declared; ${this.#left()} follow`);
    this.#at += length;
  }

  #atBreak(): boolean {
    if (this.#left() === 0) this.#fail('The CBOR ends too early');
    if (this.#bytes[this.#at] !== BREAK) return false;
    this.#at++;
    return true;
  }

  #array(length: number, depth: number): void {
    if (length > this.#left()) this.#fail(`An array of ${length} is declared; ${this.#left()} bytes follow`);
    const place = this.#path.length;
    for (let i = 0; length === INDEFINITE ? !this.#atBreak() : i < length; i++) {
      this.#path[place] = i;
      this.#item(depth + 1);
    }
    this.#path.length = place;
  }

  #map(length: number, depth: number): void {
    if (2 * length > this.#left()) this.#fail(`A map of ${length} is declared; ${this.#left()} bytes follow`);
    if (length > MOST_FIELDS) this.#fail(`A map of more than ${MOST_FIELDS} fields`);
    const place = this.#path.length;
    const seen = new Set<string | number>();
    for (let i = 0; length === INDEFINITE ? !this.#atBreak() : i < length; i++) {
      if (i >= MOST_FIELDS) this.#fail(`A map of more than ${MOST_FIELDS} fields`);
      const key = this.#key();
      this.#path[place] = key;
      if (seen.has(key)) this.#fail('This field comes twice');
      seen.add(key);
      this.#item(depth + 1);
      this.#path.length = place;
    }
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
    const from = this.#at;
    this.#skip(argument);
    try {
      return UTF8.decode(this.#bytes.subarray(from, this.#at));
    } catch {
      return this.#fail('A key is not UTF-8');
    }
  }

  #tag(tag: number, depth: number): void {
    if (tag === SELF_DESCRIBED_TAG || tag === DATE_TIME_TAG) {
      this.#item(depth + 1);
      return;
    }
    if (!TYPED_ARRAYS.has(tag)) this.#fail(`Tag ${tag} has no meaning here`);
    const initial = this.#byte();
    const length = this.#argument(initial & 31);
    if (initial >> 5 !== 2 || length === INDEFINITE) {
      this.#fail('A typed array must be one byte string of definite length');
    }
    this.#skip(length);
    if (length % bytesPerNumber(tag) !== 0) this.#fail('A typed array holds no whole number of numbers');
  }
}
