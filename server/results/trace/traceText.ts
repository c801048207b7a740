import { stringify } from 'csv-stringify/sync';
import { type Clock, type RecordedTrace, sampleTimes } from '../../../ingest/stroke.ts';

/** JSON text of the trace, number by number as it was sent; a gap is null. */
export function traceAsJson(trace: RecordedTrace, thinned = false): string {
  const sides = trace.sides.map(
    ({ side, clock, amps }) =>
      `{"side":${JSON.stringify(side)},${clockAsJson(clock)},"amps":${numbersAsJson(amps)}}`,
  );
  const parts = [`"sides":[${sides.join(',')}]`];
  if (trace.supply) {
    parts.push(`"supply":{${clockAsJson(trace.supply.clock)},"volts":${numbersAsJson(trace.supply.volts)}}`);
  }
  if (trace.ambientC !== null) parts.push(`"ambientC":${trace.ambientC}`);
  if (thinned) parts.push('"thinned":true');
  return `{${parts.join(',')}}`;
}

function clockAsJson(clock: Clock): string {
  return 'rateHz' in clock ? `"rateHz":${clock.rateHz}` : `"t":${numbersAsJson(clock.t)}`;
}

function numbersAsJson(numbers: Float64Array): string {
  return JSON.stringify(Array.from(numbers));
}

/**
 * The trace as a table: seconds from `startedAt`, then a column for each side and one for the supply, every number as
 * it was sent. Where the columns have clocks of their own, a row holds what was sampled at its time. A gap is empty.
 * The ambient temperature, where it was sent, comes last and once, in the first row: it has no clock.
 */
export function traceAsCsv(trace: RecordedTrace): string {
  const columns = trace.sides.map(({ side, clock, amps }) => ({ title: `${side} (A)`, clock, values: amps }));
  if (trace.supply) {
    columns.push({ title: 'supply (V)', clock: trace.supply.clock, values: trace.supply.volts });
  }
  const timed = columns.map((column) => ({
    ...column,
    times: sampleTimes(column.clock, column.values.length),
  }));
  const next = timed.map(() => 0);
  const once = trace.ambientC === null ? [] : [String(trace.ambientC)];
  const titles = ['t (s)', ...timed.map(({ title }) => harmless(title)), ...once.map(() => 'ambient (C)')];
  const rows: string[][] = [titles];
  for (;;) {
    const t = Math.min(...timed.map(({ times }, i) => times[next[i]] ?? Number.POSITIVE_INFINITY));
    if (t === Number.POSITIVE_INFINITY) return stringify(rows, { record_delimiter: '\r\n' });
    const cells = timed.map(({ times, values }, i) => (times[next[i]] === t ? cell(values[next[i]++]) : ''));
    rows.push([String(t), ...cells, ...once.map((ambientC) => (rows.length === 1 ? ambientC : ''))]);
  }
}

function cell(value: number): string {
  return Number.isNaN(value) ? '' : String(value);
}

/** A spreadsheet takes a cell that begins so for a formula. */
export function harmless(title: string): string {
  return /^[=+\-@\t\r]/.test(title) ? `'${title}` : title;
}
