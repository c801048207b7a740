import { type Kysely, sql } from 'kysely';
import { unpackSamples } from '../../ingest/live/assemble.ts';
import type { LiveHeader } from '../../ingest/live/header.ts';
import type { Tables } from '../../migrations/tables.ts';
import type { Scope } from '../access/scopes/scope.ts';
import { BoundedMap } from '../boundedMap.ts';
import type { LiveSamples } from '../schemas/live.ts';

/** A stroke that nothing was added to for longer is no news; `tendLiveStrokes` keeps a stored one as long. */
const NEWS_FOR = '1 minute';
/** What is read at once; the rest with the next look. */
const MOST_BYTES = 512 * 1024;
/** Strokes whose pieces are remembered as told. */
const MOST_STROKES = 64;

/** One committed piece of a stroke of a room. */
interface PieceUnderWay {
  readonly strokeId: string;
  readonly header: LiveHeader;
  readonly seq: number;
  readonly side: number | null;
  readonly firstSample: number;
  readonly samples: Float64Array;
}

/** How far somebody was told of each stroke: the number of the piece that comes next. */
export class Heard {
  readonly #next = new BoundedMap<string, number>(MOST_STROKES);

  isNews({ strokeId, seq }: PieceUnderWay): boolean {
    return seq >= (this.#next.get(strokeId) ?? 0);
  }

  note(pieces: readonly Pick<PieceUnderWay, 'strokeId' | 'seq'>[]): void {
    for (const { strokeId, seq } of pieces) {
      this.#next.set(strokeId, Math.max(seq + 1, this.#next.get(strokeId) ?? 0));
    }
  }

  toJSON(): { id: string; next: number }[] {
    return [...this.#next].map(([id, next]) => ({ id, next }));
  }
}

/** The last pieces of strokes that came to their end a moment ago: who begins to watch finds those in the lists. */
export async function lastPiecesOfStored(
  db: Kysely<Tables>,
  { accountId }: Scope,
  roomId: string,
): Promise<Pick<PieceUnderWay, 'strokeId' | 'seq'>[]> {
  const rows = await db
    .selectFrom('live_strokes')
    .select(['id', 'next_seq'])
    .where('account_id', '=', accountId)
    .where('room_id', '=', roomId)
    .where('stored_at', 'is not', null)
    .execute();
  return rows.map(({ id, next_seq }) => ({ strokeId: id, seq: next_seq - 1 }));
}

/** Reads pieces of the room's strokes that were not heard of, in their order; there are no more when it is empty. */
export async function readPiecesUnderWay(
  db: Kysely<Tables>,
  { accountId }: Scope,
  roomId: string,
  heard: Heard,
): Promise<PieceUnderWay[]> {
  const { rows } = await sql<{
    id: string;
    header: LiveHeader;
    seq: number;
    side: number | null;
    first_sample: number;
    samples: Buffer;
  }>`
    select * from (
      select s.id, s.header, p.seq, p.side, p.first_sample, p.samples,
        sum(octet_length(p.samples)) over (order by s.id, p.seq) - octet_length(p.samples) as bytes_before
      from live_strokes s
      left join json_to_recordset(${JSON.stringify(heard)}::json) as h (id uuid, next integer) on h.id = s.id
      join live_pieces p
        on p.account_id = s.account_id and p.stroke_id = s.id and p.seq >= coalesce(h.next, 0)
      where s.account_id = ${accountId} and s.room_id = ${roomId}
        and s.touched_at > now() - ${NEWS_FOR}::interval
    ) pieces
    where bytes_before < ${MOST_BYTES}
    order by id, seq
  `.execute(db);
  return rows.map((row) => ({
    strokeId: row.id,
    header: row.header,
    seq: row.seq,
    side: row.side,
    firstSample: row.first_sample,
    samples: unpackSamples(row.samples),
  }));
}

/** What is said of them: pieces of one side that follow each other go together. */
export function pushesOf(roomId: string, pieces: readonly PieceUnderWay[]): LiveSamples[] {
  const runs = new Map<string, PieceUnderWay[]>();
  for (const piece of pieces) {
    const name = `${piece.strokeId} ${piece.side}`;
    const run = runs.get(name);
    if (run === undefined) runs.set(name, [piece]);
    else run.push(piece);
  }
  return [...runs.values()].map((run) => pushOf(roomId, run));
}

function pushOf(roomId: string, run: readonly PieceUnderWay[]): LiveSamples {
  const [{ strokeId, header, side, firstSample }] = run;
  // Where the supply has pieces, the header has its rate.
  const { rateHz } = side === null ? (header.supply ?? { rateHz: 1 }) : header.sides[side];
  const values = run.flatMap(({ samples }) =>
    Array.from(samples, (value) => (Number.isNaN(value) ? null : value)),
  );
  const about = {
    type: 'samples',
    roomId,
    strokeId,
    key: header.key,
    direction: header.direction ?? null,
    startedAt: header.startedAt,
    seq: run[run.length - 1].seq,
    rateHz,
    startsAtS: firstSample / rateHz,
  } as const;
  if (side === null) return { ...about, side: null, volts: values };
  return { ...about, side: header.sides[side].side, amps: values };
}
