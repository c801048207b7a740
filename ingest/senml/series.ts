import type { ResolvedRecord } from './resolve.ts';

/** One quantity's records by time, as a stroke takes them. */
export interface Series {
  /** Seconds from the stroke's start. */
  readonly t: number[];
  readonly values: number[];
  /** Where in the pack each sample came from. */
  readonly indices: number[];
}

/** Below what a clock of seconds since 1970 resolves in a double. */
const MICRO = 1e6;

/** Orders records by time; `first` is the record that begins the stroke. `scale` is units to a volt or ampere. */
export function seriesOf(records: readonly ResolvedRecord[], first: ResolvedRecord): Series {
  const timed = records.map((record) => ({ record, t: secondsAfter(first, record) }));
  timed.sort((a, b) => a.t - b.t);
  return {
    t: timed.map(({ t }) => t),
    values: timed.map(({ record }) => (record.value ?? Number.NaN) / (isThousandths(record) ? 1000 : 1)),
    indices: timed.map(({ record }) => record.index),
  };
}

function isThousandths(record: ResolvedRecord): boolean {
  return record.unit === 'mA' || record.unit === 'mV';
}

function secondsAfter(first: ResolvedRecord, record: ResolvedRecord): number {
  const seconds = record.baseTime - first.baseTime + (record.time - first.time);
  return Math.round(seconds * MICRO) / MICRO;
}
