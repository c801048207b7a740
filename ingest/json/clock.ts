import { MAX_RATE_HZ, MAX_TIME_S, MIN_RATE_HZ } from '../limits.ts';
import type { Clock } from '../stroke.ts';
import { type Faults, type JsonObject, own } from './faults.ts';
import { isNumbers, readNumbers } from './numbers.ts';

/** Reads `rateHz`, of at least so many, or `t`: one of which there must be for so many samples. */
export function readClock(
  object: JsonObject,
  samples: number,
  pointer: string,
  faults: Faults,
  minRateHz: number = MIN_RATE_HZ,
): Clock | null {
  const rateHz = own(object, 'rateHz');
  const times = own(object, 't');
  if (rateHz === undefined && times === undefined) {
    // One that is null was meant.
    const meant = ['rateHz', 't'].find((name) => Object.hasOwn(object, name) && object[name] === null);
    return faults.add(meant === undefined ? pointer : `${pointer}/${meant}`, 'rateHz or t is missing.');
  }
  if (rateHz !== undefined && times !== undefined) {
    return faults.add(`${pointer}/t`, 'Give either rateHz or t, not both.');
  }
  if (rateHz !== undefined) {
    if (typeof rateHz === 'number' && rateHz >= minRateHz && rateHz <= MAX_RATE_HZ) return { rateHz };
    return faults.add(`${pointer}/rateHz`, `Must be a number from ${minRateHz} to ${MAX_RATE_HZ}.`);
  }
  if (isNumbers(times) && times.length !== samples) {
    return faults.add(
      `${pointer}/t`,
      `Must hold a time for each of the ${samples} samples; it holds ${times.length}.`,
    );
  }
  const rules = { minCount: samples, maxCount: samples, largest: MAX_TIME_S, unit: 's', rising: true };
  const t = readNumbers(times, rules, `${pointer}/t`, faults);
  return t && { t };
}
