import { DecodeError, type FieldFault, pointerPart } from '../decodeError.ts';

/** Enough to mend a decoder by, few enough to read. */
export const MOST_FAULTS = 10;

/** Gathers the faults of one stroke on the way through it. */
export class Faults {
  readonly #found: FieldFault[] = [];

  add(pointer: string, detail: string): null {
    if (this.#found.length < MOST_FAULTS) this.#found.push({ pointer, detail });
    return null;
  }

  get any(): boolean {
    return this.#found.length > 0;
  }

  toError(): DecodeError {
    return new DecodeError(this.#found);
  }
}

export type JsonObject = Readonly<Record<string, unknown>>;

export function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/**
 * Reads an object's field as its own; null counts as left out. (`__proto__` in a body is a field like any other.)
 */
export function own(object: JsonObject, name: string): unknown {
  return Object.hasOwn(object, name) ? (object[name] ?? undefined) : undefined;
}

/** A misspelt optional field would be lost in silence: every field that is not known is a fault. */
export function checkNames(
  object: JsonObject,
  known: ReadonlySet<string>,
  pointer: string,
  faults: Faults,
): void {
  for (const name of Object.keys(object)) {
    if (!known.has(name)) {
      faults.add(`${pointer}/${pointerPart(wellFormed(name.slice(0, 100)))}`, 'There is no such field.');
    }
  }
}

/** Half a surrogate pair can be written in JSON, but not in UTF-8. */
function wellFormed(text: string): string {
  return Buffer.from(text).toString();
}
