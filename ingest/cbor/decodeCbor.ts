import { DecodeError, type FieldFault } from '../decodeError.ts';
import { MAX_DEPTH, MAX_NESTS } from '../limits.ts';
import { MOST_RECORDS } from '../senml/resolve.ts';
import { ByteWriter } from '../trace/byteWriter.ts';
import { bignum } from './bignum.ts';
import { CborFaults } from './cborFaults.ts';
import { CborItems, INDEFINITE, MAJOR } from './cborItems.ts';
import { decimalFraction } from './decimalFraction.ts';
import { isBignum, isTypedArray, refusalOf, TAG } from './tags.ts';
import { bytesPerNumber, halfFloat, readTypedArray } from './typedArray.ts';

/** Maps and arrays of strokes, or the records of a SenML pack. */
const MOST_NESTS = { text: MAX_NESTS, 'text or label': MOST_RECORDS + 1 } as const;
/** What a date can hold; whether the time may be is told with the field that it stands in. */
const MOST_DATE_MS = 8.64e15;
const MOST_FIELDS = 64;
const LONGEST_KEY_BYTES = 256;
const UTF8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
/** Names of fields and the like are as short as this, and of the lowest 128 characters. */
const SHORT_TEXT_BYTES = 40;
/** Of the faults of a body that is refused as a whole. */
const FAULTS_TOLD = 20;

/** Which keys a map may have: text, or the whole numbers too that SenML has for labels. */
export type KeyKind = 'text' | 'text or label';

/** What could be read, and what in it has no meaning here, by pointers from the whole. */
export interface ReadCbor {
  readonly value: unknown;
  readonly faults: readonly FieldFault[];
}

const NO_BYTES = new Uint8Array(0);
/** Stands for what has no meaning here: nothing that any field may be. */
const NO_MEANING = Symbol('no meaning');

/**
 * What JSON would have been parsed into, from CBOR (RFC 8949, appendix C), in one pass: maps become objects, typed
 * arrays (RFC 8746) `Float64Array`, decimal fractions numbers, times of tag 1 text, whole numbers beyond 2^53 bigints. What is hostile costs
 * nothing: declared lengths are held against the bytes there are; depth, items and fields have their bounds. Well-formed
 * items that have no meaning here (other tags, keys that are no text or come twice) are passed over and told, so that
 * one stroke does not hold back those beside it. `nameOf` turns labels into names where they are taken. Throws
 * `DecodeError` where the bytes are not well-formed.
 *
 * Our own, as a library's decoder would have to be preceded by a pass that checks all this, which took longer than
 * reading.
 */
export function readCbor(
  bytes: Uint8Array,
  keys: KeyKind = 'text',
  nameOf: (label: number) => string = String,
): ReadCbor {
  return new Reader(bytes, keys, nameOf).whole();
}

/** As `readCbor`; throws `DecodeError` also where anything in it has no meaning here. */
export function decodeCbor(
  bytes: Uint8Array,
  keys: KeyKind = 'text',
  nameOf: (label: number) => string = String,
): unknown {
  const { value, faults } = readCbor(bytes, keys, nameOf);
  if (faults.length > 0) throw new DecodeError(faults.slice(0, FAULTS_TOLD));
  return value;
}

class Reader {
  readonly #items: CborItems;
  readonly #keys: KeyKind;
  readonly #nameOf: (label: number) => string;
  readonly #faults = new CborFaults();
  readonly #path = this.#faults.path;

  constructor(bytes: Uint8Array, keys: KeyKind, nameOf: (label: number) => string) {
    this.#items = new CborItems(bytes, MOST_NESTS[keys], () => this.#faults.pointer());
    this.#keys = keys;
    this.#nameOf = nameOf;
  }

  whole(): ReadCbor {
    const value = this.#item(0);
    if (this.#items.left > 0) this.#items.fail('Further bytes follow the end of the CBOR item');
    return { value, faults: this.#faults.told };
  }

  #noMeaning(detail: string): typeof NO_MEANING {
    if (!this.#faults.note(detail)) this.#items.fail('Too much of the body has no meaning here');
    return NO_MEANING;
  }

  /** Notes what the next items are, and passes over them. */
  #passOver(detail: string, count = 1): typeof NO_MEANING {
    this.#noMeaning(detail);
    this.#items.skip(count);
    return NO_MEANING;
  }

  #item(depth: number): unknown {
    if (depth > MAX_DEPTH) return this.#passOver(`Nested more than ${MAX_DEPTH} deep`);
    this.#items.next();
    switch (this.#items.major) {
      case MAJOR.unsigned:
      case MAJOR.negative:
        return this.#items.wholeNumber();
      case MAJOR.bytes:
        return this.#byteString();
      case MAJOR.text:
        return this.#text();
      case MAJOR.array:
        return this.#array(this.#items.argument, depth);
      case MAJOR.map:
        return this.#map(this.#items.argument, depth);
      case MAJOR.tag:
        return this.#tag(this.#items.argument, depth);
      default:
        return this.#simple();
    }
  }

  #simple(): unknown {
    const { info, argument, view, at } = this.#items;
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
        return view.getFloat32(at - 4);
      case 27:
        return view.getFloat64(at - 8);
      default:
        return NO_MEANING;
    }
  }

  #byteString(): Uint8Array {
    let only: Uint8Array = NO_BYTES;
    let several: ByteWriter | null = null;
    this.#items.eachPiece((piece) => {
      if (several === null && only.length === 0) only = piece;
      else {
        several ??= startedWith(only);
        several.raw(piece);
      }
    });
    // The compiler does not see that the callback has been here.
    const writer = several as ByteWriter | null;
    // A copy: the writer begins with more space than a short string needs.
    return writer === null ? only : writer.written().slice();
  }

  /** Each piece is text by itself (RFC 8949, section 3.2.3). */
  #text(): string | typeof NO_MEANING {
    const texts: (string | null)[] = [];
    this.#items.eachPiece((piece) => texts.push(textOf(piece)));
    return texts.includes(null) ? this.#noMeaning('The text is not UTF-8') : texts.join('');
  }

  #array(length: number, depth: number): unknown[] {
    const place = this.#path.length;
    const items: unknown[] = [];
    for (let i = 0; length === INDEFINITE ? !this.#items.atBreak() : i < length; i++) {
      this.#path[place] = i;
      // A sample that is not there may be said either way.
      items.push(this.#item(depth + 1) ?? null);
    }
    this.#path.length = place;
    return items;
  }

  #map(length: number, depth: number): unknown {
    if (length > MOST_FIELDS) return this.#passOver(`A map of more than ${MOST_FIELDS} fields`, 2 * length);
    const place = this.#path.length;
    const fields = new Map<string, unknown>();
    const seen = new Set<string | number>();
    for (let i = 0; length === INDEFINITE ? !this.#items.atBreak() : i < length; i++) {
      if (i >= MOST_FIELDS) this.#passOver(`A map of more than ${MOST_FIELDS} fields`, 2);
      else this.#field(fields, seen, place, depth);
    }
    // `__proto__` becomes a field like any other.
    return Object.fromEntries(fields);
  }

  #field(fields: Map<string, unknown>, seen: Set<string | number>, place: number, depth: number): void {
    const key = this.#key();
    if (key === null) {
      this.#items.skip();
      return;
    }
    this.#path[place] = key;
    const name = typeof key === 'number' ? this.#nameOf(key) : key;
    if (seen.has(key)) this.#passOver('This field comes twice');
    else if (fields.has(name)) this.#passOver('This field comes twice, by its label and by its name');
    else fields.set(name, this.#item(depth + 1));
    seen.add(key);
    this.#path.length = place;
  }

  /** Null for one that may not be: told, and passed over. */
  #key(): string | number | null {
    const start = this.#items.at;
    this.#items.head();
    const { major, argument } = this.#items;
    if (major === MAJOR.unsigned || major === MAJOR.negative) {
      const label = this.#items.wholeNumber();
      if (this.#keys === 'text or label' && typeof label === 'number') return label;
    } else if (major === MAJOR.text && argument !== INDEFINITE) {
      const bytes = this.#items.take(argument);
      const key = bytes.length > LONGEST_KEY_BYTES ? null : textOf(bytes);
      if (key === null) this.#noMeaning('A key is too long, or is not UTF-8');
      return key;
    }
    this.#items.at = start;
    this.#passOver('The keys of a map must be text of definite length');
    return null;
  }

  #tag(tag: number, depth: number): unknown {
    if (tag === TAG.selfDescribed || tag === TAG.dateTime) return this.#item(depth + 1);
    if (tag === TAG.homogeneousArray && this.#items.nextMajor() === MAJOR.array) return this.#item(depth + 1);
    const start = this.#items.at;
    const value = tag === TAG.epochTime ? this.#epochTime() : this.#numeric(tag);
    if (value !== null) return value;
    this.#items.at = start;
    return this.#passOver(refusalOf(tag));
  }

  /** Seconds since 1970 as the text that JSON has for a time; null where what follows the tag is no such number. */
  #epochTime(): string | null {
    this.#items.head();
    const { major } = this.#items;
    const isWhole = major === MAJOR.unsigned || major === MAJOR.negative;
    if (!isWhole && major !== MAJOR.simple) return null;
    const seconds = isWhole ? this.#items.wholeNumber() : this.#simple();
    const ms = typeof seconds === 'number' ? Math.round(1000 * seconds) : Number.NaN;
    return Math.abs(ms) <= MOST_DATE_MS ? new Date(ms).toISOString() : null;
  }

  /** Null where the tag has no such meaning, or none with what follows it. */
  #numeric(tag: number): number | bigint | Float64Array | null {
    if (tag === TAG.decimalFraction) return decimalFraction(this.#items);
    if (!(isBignum(tag) || isTypedArray(tag)) || this.#items.nextMajor() !== MAJOR.bytes) return null;
    this.#items.head();
    const bytes = this.#byteString();
    if (isBignum(tag)) return bignum(bytes, tag === TAG.negativeBignum);
    return bytes.length % bytesPerNumber(tag) === 0 ? readTypedArray(tag, bytes) : null;
  }
}

function startedWith(bytes: Uint8Array): ByteWriter {
  const writer = new ByteWriter();
  writer.raw(bytes);
  return writer;
}

/** Null where the bytes are not UTF-8. */
function textOf(bytes: Uint8Array): string | null {
  // A decoder is slow to begin.
  if (bytes.length <= SHORT_TEXT_BYTES && bytes.every((byte) => byte < 128)) {
    return String.fromCharCode(...bytes);
  }
  try {
    return UTF8.decode(bytes);
  } catch {
    return null;
  }
}
