/** Meetings of teeth per second of a wheel with so many teeth: the same for both wheels of a pair. */
export function gearMesh(teeth: number, rpm: number): number {
  return (teeth * rpm) / 60;
}

/** Revolutions per minute of the wheel driven. */
export function drivenRpm(rpm: number, drivingTeeth: number, drivenTeeth: number): number {
  return (rpm * drivingTeeth) / drivenTeeth;
}

/**
 * How often per second the same two teeth meet: a fault on one tooth of each shows once in that time.
 *
 * Source: R. Eisenmann, Machinery Malfunction Diagnosis and Correction (1998), hunting tooth frequency.
 */
export function huntingToothHz(meshHz: number, teeth: number, otherTeeth: number): number {
  return (meshHz * greatestCommonDivisor(teeth, otherTeeth)) / (teeth * otherTeeth);
}

/**
 * Travel of a rack for one turn of its gear, in metres: a bad tooth shows once in it. `pitchMm` is measured along
 * the rack from tooth to tooth. RangeError unless both are above 0.
 */
export function travelPerTurnMetres(teeth: number, pitchMm: number): number {
  if (!(teeth > 0 && pitchMm > 0))
    throw new RangeError(`teeth and pitch lie above 0, not ${teeth} and ${pitchMm}`);
  return (teeth * pitchMm) / 1000;
}

/**
 * Ripples of the current of a brushed motor per revolution: least common multiple of poles (or brushes) and
 * commutator segments.
 */
export function ripplesPerRevolution(poles: number, segments: number): number {
  return (poles * segments) / greatestCommonDivisor(poles, segments);
}

/**
 * Frequency at which a tone appears once sampled: folded into 0 to half the sampling rate.
 *
 * Source: C. E. Shannon (1949), Communication in the presence of noise.
 */
export function aliasedHz(hz: number, sampleHz: number): number {
  if (!(sampleHz > 0)) throw new RangeError(`a sampling rate lies above 0, not ${sampleHz}`);
  return Math.abs(hz - sampleHz * Math.round(hz / sampleHz));
}

function greatestCommonDivisor(a: number, b: number): number {
  if (!(Number.isInteger(a) && Number.isInteger(b) && a > 0 && b > 0)) {
    throw new RangeError(`whole numbers above 0 are needed, not ${a} and ${b}`);
  }
  let [larger, smaller] = [a, b];
  while (smaller !== 0) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}
