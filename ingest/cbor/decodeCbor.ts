import { decode } from 'cbor2/decoder';
import { DecodeError } from '../decodeError.ts';
import { type KeyKind, scanCbor } from './scan.ts';
import { readTypedArray, TYPED_ARRAY_TAGS } from './typedArray.ts';

type Field = readonly [key: unknown, value: unknown, ...rest: unknown[]];

/** Number arrays become `Float64Array`; the other tags allowed only say what their content is. */
const TAGS = new Map<number, (tag: { contents: unknown }) => unknown>([
  [0, (tag) => tag.contents],
  [55_799, (tag) => tag.contents],
  ...TYPED_ARRAY_TAGS.map(
    (number) => [number, (tag: { contents: unknown }) => typedArray(number, tag.contents)] as const,
  ),
]);

function typedArray(tag: number, contents: unknown): unknown {
  return contents instanceof Uint8Array ? readTypedArray(tag, contents) : contents;
}

/**
 * What JSON would have been parsed into, from CBOR (RFC 8949): maps become objects, typed arrays `Float64Array`.
 * `nameOf` turns labels into names where they are taken. Throws `DecodeError` with the pointer to the fault.
 */
export function decodeCbor(
  bytes: Uint8Array,
  keys: KeyKind = 'text',
  nameOf: (label: number) => string = String,
): unknown {
  scanCbor(bytes, keys);
  try {
    return decode(bytes, {
      tags: TAGS,
      ignoreGlobalTags: true,
      createObject: (fields: readonly Field[]) => objectOf(fields, nameOf),
    });
  } catch (error) {
    // What is left after the scan: text that is not UTF-8, and a field both by its label and by its name.
    throw DecodeError.at(
      '',
      `The CBOR cannot be read: ${error instanceof Error ? error.message : 'no reason'}.`,
    );
  }
}

/** `__proto__` becomes a field like any other. */
function objectOf(fields: readonly Field[], nameOf: (label: number) => string): Record<string, unknown> {
  const object = Object.fromEntries(
    fields.map(([key, value]) => [typeof key === 'number' ? nameOf(key) : String(key), value]),
  );
  if (Object.keys(object).length < fields.length) throw new Error('a field comes twice');
  return object;
}
