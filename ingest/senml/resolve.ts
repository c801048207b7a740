import { DecodeError, pointerPart } from '../decodeError.ts';
import { Faults, isObject, type JsonObject, own } from '../json/faults.ts';

/** One record with the base fields that were in force put into it (RFC 8428, section 4.6). */
export interface ResolvedRecord {
  /** Its place in the pack. */
  readonly index: number;
  readonly name: string;
  readonly unit: string | null;
  /** Base time and time, seconds: apart, as their sum would round a sample's time to a quarter of a microsecond. */
  readonly baseTime: number;
  readonly time: number;
  readonly value: number | null;
  readonly sum: number | null;
  readonly text: string | null;
  readonly flag: boolean | null;
  /** Base64 as sent in JSON; bytes in CBOR. */
  readonly octets: unknown;
}

/** Times below this are relative to now (RFC 8428, section 4.5.3): 2^28, a moment in 1978. */
const FIRST_ABSOLUTE_TIME = 2 ** 28;
/** One stroke of two sides may have 400,000 samples; more would hold everybody else up. */
export const MOST_RECORDS = 500_000;
const VERSION = 10;
const LONGEST_NAME = 500;
const NAME = /^[A-Za-z0-9][A-Za-z0-9\-:./_]*$/;
const VALUES = ['v', 'vs', 'vb', 'vd'] as const;
const OWN_FIELDS = ['n', 'u', 't', 'ut', 's', ...VALUES] as const;

interface Base {
  /** That of the first record; null: there was none yet. */
  version: unknown;
  name: string;
  time: number;
  unit: string | null;
  value: number | null;
  sum: number | null;
}

/** Whether base name and name together may stand (RFC 8428, section 4.5.1). */
export function isSenmlName(name: string): boolean {
  return name.length <= LONGEST_NAME && NAME.test(name);
}

/** Seconds since 1970 of a resolved time. */
export function absoluteTime(record: Pick<ResolvedRecord, 'baseTime' | 'time'>, nowS: number): number {
  const time = record.baseTime + record.time;
  return time < FIRST_ABSOLUTE_TIME ? nowS + time : time;
}

/**
 * Resolves a pack's records, in the order sent (RFC 8428, sections 4.5 and 4.6). A record of base fields alone only
 * sets them. Throws `DecodeError` with pointers into the pack.
 */
export function resolvePack(pack: unknown): ResolvedRecord[] {
  if (!Array.isArray(pack)) throw DecodeError.at('', 'A SenML pack must be an array of records.');
  if (pack.length > MOST_RECORDS) throw DecodeError.at('', `At most ${MOST_RECORDS} records make a stroke.`);
  const faults = new Faults();
  const base: Base = { version: null, name: '', time: 0, unit: null, value: null, sum: null };
  const resolved: ResolvedRecord[] = [];
  for (const [index, record] of pack.entries()) {
    const pointer = `/${index}`;
    if (!isObject(record)) {
      faults.add(pointer, 'A SenML record must be an object.');
      continue;
    }
    checkFields(record, pointer, faults);
    base.version ??= own(record, 'bver') ?? VERSION;
    if ((own(record, 'bver') ?? base.version) !== base.version)
      faults.add(`${pointer}/bver`, 'All records of a pack have one version.');
    takeBase(record, base, pointer, faults);
    if (OWN_FIELDS.some((field) => own(record, field) !== undefined)) {
      const one = resolve(record, index, base, pointer, faults);
      if (one !== null) resolved.push(one);
    }
  }
  if (faults.any) throw faults.toError();
  return resolved;
}

/** Fields that end in `_` must be understood, all other unknown ones passed over (RFC 8428, section 4.4). */
function checkFields(record: JsonObject, pointer: string, faults: Faults): void {
  for (const field of Object.keys(record)) {
    if (field.endsWith('_')) {
      faults.add(
        `${pointer}/${pointerPart(field.slice(0, 100))}`,
        'This field must be understood, and is not.',
      );
    }
  }
  const version = own(record, 'bver');
  if (version !== undefined && !(typeof version === 'number' && version > 0 && version <= VERSION)) {
    faults.add(`${pointer}/bver`, `Versions up to ${VERSION} are understood.`);
  }
}

function takeBase(record: JsonObject, base: Base, pointer: string, faults: Faults): void {
  base.name = textIn(record, 'bn', pointer, faults) ?? base.name;
  base.unit = textIn(record, 'bu', pointer, faults) ?? base.unit;
  base.time = numberIn(record, 'bt', pointer, faults) ?? base.time;
  base.value = numberIn(record, 'bv', pointer, faults) ?? base.value;
  base.sum = numberIn(record, 'bs', pointer, faults) ?? base.sum;
}

function resolve(
  record: JsonObject,
  index: number,
  base: Base,
  pointer: string,
  faults: Faults,
): ResolvedRecord | null {
  const name = base.name + (textIn(record, 'n', pointer, faults) ?? '');
  if (!isSenmlName(name)) {
    return faults.add(
      `${pointer}/n`,
      'The name must be of A-Z a-z 0-9 - : . / _ and begin with a letter or digit.',
    );
  }
  const given = VALUES.filter((field) => own(record, field) !== undefined);
  if (given.length > 1) return faults.add(`${pointer}/${given[1]}`, 'A record has one value.');
  const flag = own(record, 'vb');
  if (flag !== undefined && typeof flag !== 'boolean') faults.add(`${pointer}/vb`, 'Must be true or false.');
  const sum = numberIn(record, 's', pointer, faults);
  const value = numberIn(record, 'v', pointer, faults);
  const numeric = given.length === 0 || given[0] === 'v';
  const hasValue = numeric && (value !== null || base.value !== null);
  if (numeric && !hasValue && sum === null) return faults.add(`${pointer}/v`, 'A record needs a value.');
  return {
    index,
    name,
    unit: textIn(record, 'u', pointer, faults) ?? (numeric ? base.unit : null),
    baseTime: base.time,
    time: numberIn(record, 't', pointer, faults) ?? 0,
    value: hasValue ? (base.value ?? 0) + (value ?? 0) : null,
    sum: sum === null ? null : (base.sum ?? 0) + sum,
    text: textIn(record, 'vs', pointer, faults),
    flag: typeof flag === 'boolean' ? flag : null,
    octets: own(record, 'vd'),
  };
}

function numberIn(record: JsonObject, field: string, pointer: string, faults: Faults): number | null {
  const value = own(record, field);
  if (value === undefined) return null;
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  return faults.add(`${pointer}/${field}`, 'Must be a number.');
}

function textIn(record: JsonObject, field: string, pointer: string, faults: Faults): string | null {
  const value = own(record, field);
  if (value === undefined) return null;
  return typeof value === 'string' ? value : faults.add(`${pointer}/${field}`, 'Must be a string.');
}
