import { MAX_AMPS, MAX_SAMPLES, MAX_SIDES, MIN_SAMPLES } from '../limits.ts';
import { isStorable } from '../storableText.ts';
import type { RecordedSide } from '../stroke.ts';
import { readClock } from './clock.ts';
import { checkNames, type Faults, isObject, type JsonObject, own } from './faults.ts';
import { readNumbers } from './numbers.ts';

const KNOWN = new Set(['side', 'rateHz', 't', 'amps', 'milliamps', 'counts', 'ampsPerCount']);
const MILLI = 1000;
const AMPS = { minCount: MIN_SAMPLES, maxCount: MAX_SAMPLES, largest: MAX_AMPS, unit: 'A', gaps: true };
/** A picoampere: below it there is no sensor. */
const SMALLEST_STEP = 1e-12;
/** n / 1000 is the double nearest to the decimal, so the sender's whole number is never lost. */
const MILLIAMPS = { ...AMPS, unit: 'mA', wholeOver: MILLI };

export function readSides(value: unknown, pointer: string, faults: Faults): RecordedSide[] | null {
  if (!Array.isArray(value) || value.length === 0 || value.length > MAX_SIDES) {
    return faults.add(pointer, `Must be an array of 1 to ${MAX_SIDES} sides.`);
  }
  const sides: RecordedSide[] = [];
  const names = new Set<string>();
  for (const [i, item] of value.entries()) {
    const side = readSide(item, `${pointer}/${i}`, faults);
    if (side === null) continue;
    if (names.has(side.side)) faults.add(`${pointer}/${i}/side`, 'This side comes twice.');
    names.add(side.side);
    sides.push(side);
  }
  return sides;
}

function readSide(value: unknown, pointer: string, faults: Faults): RecordedSide | null {
  if (!isObject(value)) return faults.add(pointer, 'Must be an object.');
  checkNames(value, KNOWN, pointer, faults);
  const side = own(value, 'side');
  if (typeof side !== 'string' || !isStorable(side)) {
    // Text that the database cannot be asked for would fail the strokes that came with it.
    return faults.add(`${pointer}/side`, 'Must be the name of a side of the room.');
  }
  const amps = readAmps(value, pointer, faults);
  const clock = amps && readClock(value, amps.length, pointer, faults);
  if (amps === null || clock === null) return null;
  const ampsPerCount = own(value, 'ampsPerCount');
  return typeof ampsPerCount === 'number' ? { side, clock, amps, ampsPerCount } : { side, clock, amps };
}

/** The current in whichever form it came; a piece of a stroke under way may hold a single sample. */
export function readAmps(
  side: JsonObject,
  pointer: string,
  faults: Faults,
  minCount: number = MIN_SAMPLES,
): Float64Array | null {
  const amps = own(side, 'amps');
  const milliamps = own(side, 'milliamps');
  const counts = own(side, 'counts');
  const scale = own(side, 'ampsPerCount');
  if (milliamps !== undefined && amps !== undefined) return twoForms('amps', 'milliamps', pointer, faults);
  if (counts !== undefined) {
    if (amps !== undefined) return twoForms('amps', 'counts', pointer, faults);
    if (milliamps !== undefined) return twoForms('milliamps', 'counts', pointer, faults);
    return readCounts(counts, scale, minCount, pointer, faults);
  }
  if (amps === undefined && milliamps === undefined) return faults.add(`${pointer}/amps`, 'Is missing.');
  if (scale !== undefined) return faults.add(`${pointer}/ampsPerCount`, 'Belongs to counts only.');
  return milliamps === undefined
    ? readNumbers(amps, AMPS, `${pointer}/amps`, faults, minCount)
    : readNumbers(milliamps, MILLIAMPS, `${pointer}/milliamps`, faults, minCount);
}

function twoForms(form: string, another: string, pointer: string, faults: Faults): null {
  return faults.add(`${pointer}/${another}`, `Give either ${form} or ${another}, not both.`);
}

/** Whole counts of the logger's converter; a negative scale is a clamp put on the other way round. */
function readCounts(
  sent: unknown,
  scale: unknown,
  minCount: number,
  pointer: string,
  faults: Faults,
): Float64Array | null {
  const magnitude = typeof scale === 'number' ? Math.abs(scale) : 0;
  if (typeof scale !== 'number' || !(magnitude >= SMALLEST_STEP && magnitude <= MAX_AMPS)) {
    const range = `from ${SMALLEST_STEP} to ${MAX_AMPS} either way`;
    return faults.add(`${pointer}/ampsPerCount`, `Must be the amperes of one count, ${range}.`);
  }
  return readNumbers(sent, { ...AMPS, wholeTimes: scale }, `${pointer}/counts`, faults, minCount);
}
