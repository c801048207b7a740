import { DIRECTIONS, type Direction } from '../../analysis/trace.ts';
import { DecodeError } from '../decodeError.ts';
import { AMBIENT_C, MAX_KEY_CHARACTERS, MAX_SAMPLES, MAX_VOLTS, MIN_SUPPLY_RATE_HZ } from '../limits.ts';
import { isStorable } from '../storableText.ts';
import type { IncomingStroke, RecordedSupply } from '../stroke.ts';
import { parseTimestamp } from '../timestamp.ts';
import { readClock } from './clock.ts';
import { checkNames, Faults, isObject, MOST_FAULTS, own } from './faults.ts';
import { readNumbers } from './numbers.ts';
import { PartlyRead } from './partlyRead.ts';
import { readSides } from './side.ts';

const KNOWN = new Set(['key', 'roomId', 'direction', 'startedAt', 'sides', 'supply', 'ambientC']);
const KNOWN_OF_SUPPLY = new Set(['rateHz', 't', 'volts']);
export const VOLTS = { minCount: 1, maxCount: MAX_SAMPLES, largest: MAX_VOLTS, unit: 'V', gaps: true };

/**
 * Reads one stroke of contract section 4 that JSON was parsed into. `pointer` is where it stands in the body, empty
 * for the whole. Throws `DecodeError` with the first fields at fault.
 */
export function decodeStroke(value: unknown, pointer: string): IncomingStroke {
  if (value instanceof PartlyRead) throw new DecodeError(value.faults.slice(0, MOST_FAULTS));
  if (!isObject(value)) throw DecodeError.at(pointer, 'A stroke must be an object.');
  const faults = new Faults();
  checkNames(value, KNOWN, pointer, faults);
  const key = readKey(own(value, 'key'), `${pointer}/key`, faults);
  const roomId = readRoomId(own(value, 'roomId'), `${pointer}/roomId`, faults);
  const direction = readDirection(own(value, 'direction'), `${pointer}/direction`, faults);
  const startedAtMs = readStart(own(value, 'startedAt'), `${pointer}/startedAt`, faults);
  const sides = readSides(own(value, 'sides'), `${pointer}/sides`, faults);
  const supply = readSupply(own(value, 'supply'), `${pointer}/supply`, faults);
  const ambientC = readAmbient(own(value, 'ambientC'), `${pointer}/ambientC`, faults);
  if (faults.any || key === null || roomId === null || startedAtMs === null || sides === null) {
    throw faults.toError();
  }
  return { key, roomId, direction, startedAtMs, sides, supply, ambientC };
}

/** The key of a stroke that could not be read, so that its sender can tell which it was. */
export function keyOf(value: unknown): string | null {
  const stroke = value instanceof PartlyRead ? value.value : value;
  return isObject(stroke) ? readKey(own(stroke, 'key'), '', new Faults()) : null;
}

function readKey(value: unknown, pointer: string, faults: Faults): string | null {
  const sound =
    typeof value === 'string' &&
    value.length > 0 &&
    (value.length <= MAX_KEY_CHARACTERS || [...value].length <= MAX_KEY_CHARACTERS);
  if (!sound) return faults.add(pointer, `Must be a string of 1 to ${MAX_KEY_CHARACTERS} characters.`);
  if (!isStorable(value)) {
    return faults.add(pointer, 'Must be well-formed text without the character U+0000.');
  }
  return value;
}

function readRoomId(value: unknown, pointer: string, faults: Faults): string | null {
  return typeof value === 'string' ? value : faults.add(pointer, 'Must be the id of a room.');
}

function readDirection(value: unknown, pointer: string, faults: Faults): Direction | null {
  if (value === undefined) return null;
  const direction = DIRECTIONS.find((known) => known === value);
  return direction ?? faults.add(pointer, `Must be one of: ${DIRECTIONS.join(', ')}; or left out.`);
}

function readStart(value: unknown, pointer: string, faults: Faults): number | null {
  const ms = typeof value === 'string' ? parseTimestamp(value) : null;
  return ms ?? faults.add(pointer, 'Must be a time of RFC 3339 with its offset: 2026-05-02T16:20:11Z.');
}

function readSupply(value: unknown, pointer: string, faults: Faults): RecordedSupply | null {
  if (value === undefined) return null;
  if (!isObject(value)) return faults.add(pointer, 'Must be an object.');
  checkNames(value, KNOWN_OF_SUPPLY, pointer, faults);
  const volts = readNumbers(own(value, 'volts'), VOLTS, `${pointer}/volts`, faults);
  const clock = volts && readClock(value, volts.length, pointer, faults, MIN_SUPPLY_RATE_HZ);
  return clock && { clock, volts };
}

function readAmbient(value: unknown, pointer: string, faults: Faults): number | null {
  if (value === undefined) return null;
  const sound = typeof value === 'number' && value >= AMBIENT_C.min && value <= AMBIENT_C.max;
  return sound ? value : faults.add(pointer, `Must be a number from ${AMBIENT_C.min} to ${AMBIENT_C.max}.`);
}
