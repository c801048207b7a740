/** What a title, a row of units or a cell may name, and is understood. */
export type Unit = 'A' | 'mA' | 'V' | 'mV' | 'C' | 'F' | 's' | 'ms' | 'us';

const UNITS: Readonly<Record<Unit, readonly string[]>> = {
  A: ['a', 'amp', 'amps', 'ampere', 'amperes'],
  mA: ['ma', 'milliamp', 'milliamps', 'milliampere', 'milliamperes'],
  V: ['v', 'volt', 'volts'],
  mV: ['mv', 'millivolt', 'millivolts'],
  C: ['c', '°c', 'degc', 'celsius'],
  F: ['°f', 'degf', 'fahrenheit'],
  s: ['s', 'sec', 'secs', 'second', 'seconds'],
  ms: ['ms', 'msec', 'millis', 'millisecond', 'milliseconds'],
  us: ['us', 'µs', 'μs', 'micros', 'microseconds'],
};
const UNIT_OF = new Map(
  // The keys of the table above are its units.
  (Object.keys(UNITS) as Unit[]).flatMap((unit) => UNITS[unit].map((word) => [word, unit] as const)),
);
/** What meters measure besides: a column of them is no current, whatever else its title says. */
const OTHERS = new Set(
  [
    ...['na', 'ua', 'µa', 'μa', 'ka', 'ah', 'mah', 'kv', 'w', 'mw', 'kw', 'watt', 'watts', 'wh', 'kwh', 'va'],
    ...[
      'ohm',
      'ohms',
      'Ω',
      'ω',
      'Ω',
      'kω',
      'kΩ',
      'mω',
      'hz',
      'khz',
      'rpm',
      'k',
      '%',
      '%rh',
      'nm',
      'mm',
      'cm',
      'm',
      'kg',
      'db',
    ],
  ].map((word) => word.toLowerCase()),
);

/** The unit of that name; null: it is none, or none that is understood. */
export function unitNamed(word: string): Unit | null {
  return UNIT_OF.get(word.trim().toLowerCase()) ?? null;
}

/** Whether it is the unit of something that no stroke is made of, such as `W`. */
export function isOtherUnit(word: string): boolean {
  return OTHERS.has(word.trim().toLowerCase());
}
