/** What a stroke may hold, the same in every format. Beyond these a record is an accident, not a measurement. */
export const MAX_STROKES_PER_REQUEST = 500;
/** An array of strokes, a stroke, its sides, a side, its numbers: five, and a few more for tags. */
export const MAX_DEPTH = 12;
/** Objects and arrays: of 500 strokes with all the sides that one may have. */
export const MAX_NESTS = 20_000;
export const MAX_KEY_CHARACTERS = 200;
export const MIN_SAMPLES = 2;
export const MAX_SAMPLES = 200_000;
export const MIN_RATE_HZ = 1;
/** A supply may be looked at as seldom as once a stroke. */
export const MIN_SUPPLY_RATE_HZ = 0.01;
export const MAX_RATE_HZ = 5000;
/** More sides than any room has. */
export const MAX_SIDES = 8;
export const MAX_AMPS = 10_000;
export const MAX_VOLTS = 1000;
/** About eleven days either way. */
export const MAX_TIME_S = 1_000_000;
/**
 * From absolute zero to what no sensor in a coach reads; weather in kelvin lies beyond it. What can be weather is
 * `weatherOf`'s to say.
 */
export const AMBIENT_C = { min: -273.15, max: 200 } as const;
