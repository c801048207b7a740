import { stringify } from 'csv-stringify/sync';
import { type Clock, type RecordedTrace, sampleTimes } from '../../../ingest/stroke.ts';

/** To a piece: some milliseconds' work. */
const NUMBERS_IN_PIECE = 10_000;
const ROWS_IN_PIECE = 2_000;

/** JSON text of the trace, number by number as it was sent; a gap is null. */
export function traceAsJson(trace: RecordedTrace): string {
  return [...jsonOfTrace(trace)].join('');
}

/** The same piece by piece: a long one has more than a million numbers. */
export function* jsonOfTrace(trace: RecordedTrace, thinned = false): Generator<string> {
  yield '{"sides":[';
  for (const [i, { side, clock, amps }] of trace.sides.entries()) {
    yield `${i === 0 ? '' : ','}{"side":${JSON.stringify(side)},`;
    yield* jsonOfClock(clock);
    yield ',"amps":';
    yield* jsonOfNumbers(amps);
    yield '}';
  }
  yield ']';
  if (trace.supply) {
    yield ',"supply":{';
    yield* jsonOfClock(trace.supply.clock);
    yield ',"volts":';
    yield* jsonOfNumbers(trace.supply.volts);
    yield '}';
  }
  if (trace.ambientC !== null) yield `,"ambientC":${trace.ambientC}`;
  yield thinned ? ',"thinned":true}' : '}';
}

function* jsonOfClock(clock: Clock): Generator<string> {
  if ('rateHz' in clock) {
    yield `"rateHz":${clock.rateHz}`;
    return;
  }
  yield '"t":';
  yield* jsonOfNumbers(clock.t);
}

function* jsonOfNumbers(numbers: Float64Array): Generator<string> {
  yield '[';
  for (let from = 0; from < numbers.length; from += NUMBERS_IN_PIECE) {
    const piece = Array.from(numbers.subarray(from, from + NUMBERS_IN_PIECE));
    yield (from === 0 ? '' : ',') + JSON.stringify(piece).slice(1, -1);
  }
  yield ']';
}

/**
 * The trace as a table, piece by piece: seconds from `startedAt`, then a column for each side and one for the supply, every
 * number as it was sent. Where the columns have clocks of their own, a row holds what was sampled at its time. A gap is
 * empty. The ambient temperature, where it was sent, comes last and once, in the first row: it has no clock.
 */
export function* csvOfTrace(trace: RecordedTrace): Generator<string> {
  const columns = trace.sides.map(({ side, clock, amps }) => ({ title: `${side} (A)`, clock, values: amps }));
  if (trace.supply) {
    columns.push({ title: 'supply (V)', clock: trace.supply.clock, values: trace.supply.volts });
  }
  const timed = columns.map(({ clock, values }) => ({
    values,
    times: sampleTimes(clock, values.length),
    at: 0,
  }));
  const hasAmbient = trace.ambientC !== null;
  const titles = [
    't (s)',
    ...columns.map(({ title }) => harmless(title)),
    ...(hasAmbient ? ['ambient (C)'] : []),
  ];
  yield stringify([titles], { record_delimiter: END_OF_ROW });
  let rest = hasAmbient ? `,${trace.ambientC}${END_OF_ROW}` : END_OF_ROW;
  let rows = '';
  for (let row = 1; ; row++) {
    let t = Number.POSITIVE_INFINITY;
    for (const { times, at } of timed) if (at < times.length && times[at] < t) t = times[at];
    if (t === Number.POSITIVE_INFINITY) break;
    // Numbers need no quotes, which is what a library would look for in each.
    rows += t;
    for (const column of timed)
      rows += column.times[column.at] === t ? `,${cell(column.values[column.at++])}` : ',';
    rows += rest;
    rest = hasAmbient ? `,${END_OF_ROW}` : END_OF_ROW;
    if (row % ROWS_IN_PIECE !== 0) continue;
    yield rows;
    rows = '';
  }
  yield rows;
}

const END_OF_ROW = '\r\n';

function cell(value: number): string {
  return Number.isNaN(value) ? '' : String(value);
}

/** A spreadsheet takes a cell that begins so for a formula. */
export function harmless(title: string): string {
  return /^[=+\-@\t\r]/.test(title) ? `'${title}` : title;
}
