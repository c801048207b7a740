import type { SideRecord, StrokeRecord } from '../simulator/strokeRecord.ts';

/** One stroke as it lies in the spool: the JSON of contract section 4. */
export interface OutgoingStroke extends StrokeRecord {
  readonly key: string;
  readonly roomId: string;
}

/** Typed arrays, as decoders make them, become lists; NaN becomes null, a missed sample. */
export function asJson(stroke: unknown): OutgoingStroke {
  const text = JSON.stringify(stroke, (_name, value: unknown) =>
    value instanceof Float64Array
      ? Array.from(value, (number) => (Number.isNaN(number) ? null : number))
      : value,
  );
  return JSON.parse(text);
}

/** Amperes of a side, whichever unit they are kept in. */
export function ampsOf({ amps, milliamps = [] }: SideRecord): readonly (number | null)[] {
  return amps ?? milliamps.map((number) => number / 1000);
}
