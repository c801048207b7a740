/** A current shunt by its rating. */
export interface Shunt {
  readonly ratedAmps: number;
  readonly ratedMillivolts: number;
}

/** A converter of 0 to `referenceVolts` into counts from 0 to 2^bits - 1, behind an amplifier. */
export interface Converter {
  readonly bits: number;
  readonly referenceVolts: number;
  readonly gain: number;
}

/** Resistance of a shunt, in ohms; RangeError for a rating that is not above 0. */
export function shuntOhms({ ratedAmps, ratedMillivolts }: Shunt): number {
  if (!(ratedAmps > 0 && ratedMillivolts > 0)) {
    throw new RangeError(`a rating lies above 0, not ${ratedAmps} A and ${ratedMillivolts} mV`);
  }
  return ratedMillivolts / 1000 / ratedAmps;
}

/** Current through a shunt, by the millivolts across it. */
export function shunt(rating: Shunt, millivolts: number): number {
  return millivolts / 1000 / shuntOhms(rating);
}

/** Heat in a shunt at its rated current, in watts. */
export function shuntRatedWatts({ ratedAmps, ratedMillivolts }: Shunt): number {
  return (ratedAmps * ratedMillivolts) / 1000;
}

/** Current that a shunt may carry for long: two thirds of its rating, as makers advise. */
export function shuntContinuousAmps({ ratedAmps }: Shunt): number {
  return (ratedAmps * 2) / 3;
}

/** Amperes that one count of the converter stands for. */
export function ampsPerCount(ohms: number, { bits, referenceVolts, gain }: Converter): number {
  if (!(ohms > 0 && gain > 0 && bits > 0)) {
    throw new RangeError(`resistance, gain and bits lie above 0, not ${ohms}, ${gain} and ${bits}`);
  }
  return referenceVolts / 2 ** bits / gain / ohms;
}
