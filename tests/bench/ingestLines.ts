import { median } from './median.ts';
import type { Line } from './table.ts';

/** Of each round a figure: strokes (or rows, or requests) a second. */
export interface Rates {
  /** Straight into the database: a row to a statement, and a hundred. */
  readonly insert: number[];
  readonly hundred: number[];
  /** Over HTTP: nothing done, a ready row inserted, a row for each sample. */
  readonly empty: number[];
  readonly bare: number[];
  readonly rows: number[];
  /** One JSON stroke a request, while the analysis runs along. */
  readonly acknowledged: number[];
  /** Until analysed. */
  readonly json: number[];
  readonly cbor: number[];
  readonly batches: number[];
  /** Milliseconds of single acknowledgements at half of that load. */
  readonly paced: number[][];
  /** The same of bare rows as often: what the machine itself does to single answers. */
  readonly pacedBare: number[][];
  /** Processor milliseconds a stroke (a row, where it is bare), the sender's left out. */
  readonly spentMs: Readonly<Record<'bare' | 'json' | 'cbor' | 'batches', number[]>>;
}

/** The figures beside their aims. The ratios are to HTTP with a bare INSERT. */
export function linesOf(rates: Rates): Line[] {
  const [bare, rows] = [median(rates.bare), median(rates.rows)];
  const [json, cbor, batches] = [median(rates.json), median(rates.cbor), median(rates.batches)];
  const [times, timesBare] = [rates.paced.flat(), rates.pacedBare.flat()];
  return [
    { what: 'HTTP with a bare INSERT of a ready row, requests a second', ratio: bare, aim: '' },
    { what: 'bare INSERT, pool of 8', ratio: median(rates.insert) / bare, aim: '' },
    { what: 'bare INSERT of 100 rows, pool of 8', ratio: median(rates.hundred) / bare, aim: '' },
    { what: 'empty POST', ratio: median(rates.empty) / bare, aim: '' },
    { what: 'a row for each sample', ratio: rows / bare, aim: '' },
    { what: 'one JSON stroke a request, acknowledged', ratio: median(rates.acknowledged) / bare, aim: '' },
    { what: 'one JSON stroke a request, 32 connections, until analysed', ratio: json / bare, aim: '>= 0.8' },
    { what: 'one CBOR stroke a request, 32 connections, until analysed', ratio: cbor / bare, aim: '>= 1.0' },
    { what: 'batches of 100 in JSON, 8 connections, until analysed', ratio: batches / bare, aim: '>= 1.0' },
    { what: 'one JSON stroke a request to a row for each sample', ratio: json / rows, aim: '>= 15' },
    { what: 'one CBOR stroke a request to a row for each sample', ratio: cbor / rows, aim: '>= 15' },
    { what: 'batches of 100 to a row for each sample', ratio: batches / rows, aim: '>= 15' },
    {
      what: 'acknowledgement of one JSON stroke at half of that load, median ms',
      ratio: median(times),
      aim: '',
    },
    { what: 'its 99th percentile to its median', ratio: slowest(times) / median(times), aim: '< 5' },
    {
      what: 'the same of a bare row, as often: what else the machine does',
      ratio: slowest(timesBare) / median(timesBare),
      aim: '',
    },
    ...spentLines(rates.spentMs),
  ];
}

/** The 99th percentile. */
function slowest(times: readonly number[]): number {
  return times.toSorted((a, b) => a - b)[Math.floor(0.99 * times.length)];
}

/** What the ratios above come from, and less moved by whatever else the machine does. */
function spentLines(spentMs: Rates['spentMs']): Line[] {
  const named = {
    bare: 'a bare row',
    json: 'a JSON stroke',
    cbor: 'a CBOR stroke',
    batches: 'a stroke of a batch',
  };
  return Object.entries(named).map(([form, what]) => ({
    what: `processor ms of service and Postgres for ${what}`,
    ratio: median(spentMs[form as keyof typeof named]),
    aim: '',
  }));
}
