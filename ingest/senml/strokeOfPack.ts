import { DecodeError } from '../decodeError.ts';
import type { Place, SentQuery, TranslatedForm } from '../forms/sentForm.ts';
import { Faults } from '../json/faults.ts';
import { MAX_SIDES } from '../limits.ts';
import { placeNamed } from './names.ts';
import { absoluteTime, type ResolvedRecord, resolvePack } from './resolve.ts';
import { type Series, seriesOf } from './series.ts';

const CURRENT = new Set(['A', 'mA']);
const VOLTAGE = new Set(['V', 'mV']);
const TEMPERATURE = 'Cel';
/** What a text may be said under: as a pack has no other place for it. */
const TEXTS = ['roomId', 'key', 'direction'] as const;
const MOST_DATE_MS = 8.64e15;

interface Sorted {
  readonly sides: Map<string, ResolvedRecord[]>;
  readonly supply: ResolvedRecord[];
  readonly ambient: ResolvedRecord[];
  /** What names and texts say; the query goes before them. */
  readonly said: { roomId?: string; key?: string; direction?: string };
}

/**
 * One SenML pack is one stroke (RFC 8428; mA and mV of RFC 8798): amperes are the side that their name ends in, volts
 * the supply, degrees Celsius the ambient temperature. The earliest record begins the stroke. Throws `DecodeError`.
 */
export function strokeOfPack(pack: unknown, query: SentQuery, nowMs: number): TranslatedForm {
  const records = resolvePack(pack);
  const { sides, supply, ambient, said } = sort(records);
  const sampled = [...sides.values(), supply].flat();
  if (sides.size === 0) throw DecodeError.at('', 'There is no record of a current, in A or mA, in the pack.');
  const nowS = nowMs / 1000;
  const first = sampled.reduce((a, b) => (absoluteTime(b, nowS) < absoluteTime(a, nowS) ? b : a));
  const sideSeries = [...sides].map(([side, its]) => ({ side, series: seriesOf(its, first) }));
  const supplySeries = supply.length === 0 ? null : seriesOf(supply, first);
  return {
    strokes: {
      ...said,
      ...ofQuery(query),
      startedAt: query.startedAt ?? startOf(first, nowS),
      sides: sideSeries.map(({ side, series }) => ({ side, t: series.t, amps: series.values })),
      ...(supplySeries === null ? {} : { supply: { t: supplySeries.t, volts: supplySeries.values } }),
      ...(ambient.length === 0 ? {} : { ambientC: ambient[0].value }),
    },
    placeOf: (pointer) =>
      placeIn(
        pointer,
        sideSeries.map(({ series }) => series),
        supplySeries,
        ambient[0]?.index,
        first.index,
      ),
  };
}

function sort(records: readonly ResolvedRecord[]): Sorted {
  const sorted: Sorted = { sides: new Map(), supply: [], ambient: [], said: {} };
  const faults = new Faults();
  for (const record of records) place(record, sorted, faults);
  if (faults.any) throw faults.toError();
  return sorted;
}

function place(record: ResolvedRecord, { sides, supply, ambient, said }: Sorted, faults: Faults): void {
  const pointer = `/${record.index}`;
  const { roomId, key, last } = placeNamed(record.name);
  for (const [field, value] of [
    ['roomId', roomId],
    ['key', key],
  ] as const) {
    if (value === null) continue;
    if (said[field] !== undefined && said[field] !== value) {
      faults.add(
        `${pointer}/n`,
        `One pack is one stroke: this name says another ${field} than those before.`,
      );
    }
    said[field] = value;
  }
  if (record.text !== null) {
    const field = TEXTS.find((name) => name === last);
    if (field === undefined) faults.add(`${pointer}/n`, `A text must be named ${TEXTS.join(', ')}.`);
    else said[field] = record.text;
    return;
  }
  if (record.value === null) {
    faults.add(pointer, 'Must carry a number, v.');
  } else if (CURRENT.has(record.unit ?? '')) {
    const side = sides.get(last) ?? [];
    if (side.length === 0 && sides.size >= MAX_SIDES)
      faults.add(`${pointer}/n`, `More than ${MAX_SIDES} sides.`);
    else sides.set(last, side);
    side.push(record);
  } else if (VOLTAGE.has(record.unit ?? '')) supply.push(record);
  else if (record.unit === TEMPERATURE) ambient.push(record);
  else
    faults.add(
      `${pointer}/u`,
      'The unit must be A or mA for a side, V or mV for the supply, Cel for ambient.',
    );
}

/** Leaves out what the query does not say, or it would hide what the names say. */
function ofQuery({ roomId, key, direction }: SentQuery): object {
  return Object.fromEntries(
    Object.entries({ roomId, key, direction }).filter(([, value]) => value !== undefined),
  );
}

function startOf(first: ResolvedRecord, nowS: number): string {
  const ms = Math.round(absoluteTime(first, nowS) * 1000);
  if (Math.abs(ms) > MOST_DATE_MS)
    throw DecodeError.at(`/${first.index}/t`, 'The time is beyond any calendar.');
  return new Date(ms).toISOString();
}

/** Of `/sides/0/amps/3` the record that the sample came from, and so on; the query's fields keep their names. */
function placeIn(
  pointer: string,
  sides: readonly Series[],
  supply: Series | null,
  ambientIndex: number | undefined,
  firstIndex: number,
): Place {
  const [, whole, place, field, sample] = pointer.split('/');
  if (whole === 'ambientC' && ambientIndex !== undefined) return { pointer: `/${ambientIndex}/v` };
  if (whole === 'startedAt') return { pointer: `/${firstIndex}/t` };
  const inSides = whole === 'sides' && place !== undefined;
  const series = inSides ? sides[Number(place)] : whole === 'supply' ? supply : null;
  if (!series) return { pointer };
  const [what, at] = inSides ? [field, sample] : [place, field];
  const index = series.indices[Number(at ?? 0)] ?? series.indices[0];
  return { pointer: `/${index}/${what === 't' ? 't' : what === 'side' ? 'n' : 'v'}` };
}
