import { earlierStrokes } from './earlierStrokes.ts';
import { codeOf, GIVEN_UP, IS_GONE } from './errorCode.ts';
import type { LearnRoom, RoomRow } from './measurer.ts';
import type { Queries } from './queries.ts';
import { STORE_STATEMENT } from './storeStatement.ts';
import type { Clock, IncomingStroke } from './stroke.ts';
import { strokeId } from './strokeId.ts';
import type { StrokeToStore } from './strokeToStore.ts';
import { encodeTrace } from './traceCodec.ts';
import { isUuid } from './uuid.ts';

/** Who sends: a logger to the rooms of its own coach, a person to all rooms of the account. */
export interface Sender {
  readonly accountId: string;
  /** Keys are unique for each. */
  readonly senderId: string;
  readonly loggerId: string | null;
  /** null: every coach of the account. */
  readonly coachId: string | null;
}

export type StoreOutcome =
  | { readonly outcome: 'stored' | 'duplicate'; readonly strokeId: string }
  | { readonly outcome: 'unknown-room' }
  | { readonly outcome: 'unknown-sides'; readonly sides: readonly string[] };

/** A room or a stroke was removed between the look and the insert, or two statements met badly: look again. */
const TRY_AGAIN = new Set([...GIVEN_UP, IS_GONE]);
const MOST_TRIES = 4;

/** Null where times were sent. */
const rateOf = (clock: Clock): number | null => ('rateHz' in clock ? clock.rateHz : null);

/** Packs a stroke for storing: all the work that needs no database. */
export function prepareStroke(sender: Sender, stroke: IncomingStroke): StrokeToStore {
  return {
    row: {
      account_id: sender.accountId,
      id: strokeId(sender.senderId, stroke.key, stroke.startedAtMs),
      // An id of another form is of no room.
      room_id: isUuid(stroke.roomId) ? stroke.roomId : null,
      coach_id: sender.coachId,
      sender_id: sender.senderId,
      logger_id: sender.loggerId,
      key: stroke.key,
      direction: stroke.direction,
      started_at: new Date(stroke.startedAtMs).toISOString(),
      recorded_sides: stroke.sides.map(({ side }) => side),
      side_rates_hz: stroke.sides.map(({ clock }) => rateOf(clock)),
      has_supply: stroke.supply !== null,
      supply_rate_hz: stroke.supply && rateOf(stroke.supply.clock),
      ambient_c: stroke.ambientC,
    },
    trace: encodeTrace(stroke),
    recorded: stroke,
    brought: null,
  };
}

/**
 * Stores strokes of any senders in one statement; when it answers, they are committed (through a client that is in a
 * transaction of its own: with that). Outcomes come in the order given. A stroke sent before is a `duplicate` with its
 * first id, whatever has become of it, of its room or of its room's sides since. `learn` is told of rooms that are not
 * what the strokes were measured by.
 */
export async function storeStrokes(
  pool: Queries,
  strokes: readonly StrokeToStore[],
  learn: LearnRoom = () => undefined,
): Promise<StoreOutcome[]> {
  const outcomes = new Array<StoreOutcome>(strokes.length);
  let left = strokes.map((_, n) => n);
  for (let tries = 1; left.length > 0; tries++) {
    try {
      left = await storeOnce(pool, strokes, left, outcomes, learn);
    } catch (error) {
      if (tries >= MOST_TRIES || !TRY_AGAIN.has(codeOf(error))) throw error;
    }
    // Removed again and again between the insert that met them and the look for them.
    if (left.length > 0 && tries >= 2 * MOST_TRIES)
      throw new Error(
        `${left.length} of ${strokes.length} strokes vanish while they are stored, ${tries} times over.`,
      );
  }
  return outcomes;
}

interface StoredRow {
  readonly n: number;
  readonly room_known: boolean;
  readonly unknown_sides: readonly string[];
  readonly id: string | null;
  readonly measured_by_now: string | null;
  readonly room: RoomRow | null;
}

/** Answers those of `numbers` that must be tried again. */
async function storeOnce(
  pool: Queries,
  strokes: readonly StrokeToStore[],
  numbers: readonly number[],
  outcomes: StoreOutcome[],
  learn: LearnRoom,
): Promise<number[]> {
  let from = 0;
  const rows = numbers.map((n) => {
    const { row, trace, brought } = strokes[n];
    from += trace.length;
    const place = { trace_from: from - trace.length, trace_bytes: trace.length };
    return rowText(
      { n, ...row, ...place, measured_by: brought?.measuredBy ?? null },
      brought?.analysis ?? null,
    );
  });
  const traces =
    numbers.length === 1 ? strokes[numbers[0]].trace : Buffer.concat(numbers.map((n) => strokes[n].trace));
  const { rows: stored } = await pool.query<StoredRow>({
    name: 'store-strokes',
    text: STORE_STATEMENT,
    values: [`[${rows.join()}]`, traces],
  });
  const unsettled: StoredRow[] = [];
  for (const row of stored) {
    if (row.room !== null && row.measured_by_now !== null) learn(row.room, row.measured_by_now);
    if (row.id === null) unsettled.push(row);
    else outcomes[row.n] = { outcome: 'stored', strokeId: row.id };
  }
  return unsettled.length === 0 ? [] : settle(pool, strokes, unsettled, outcomes);
}

/** The analysis is JSON text already. */
function rowText(row: object, analysis: string | null): string {
  return `${JSON.stringify(row).slice(0, -1)},"analysis":${analysis}}`;
}

/** Finds the earlier strokes of the same keys, removed ones too; the rest is refused, or must be tried again. */
async function settle(
  pool: Queries,
  strokes: readonly StrokeToStore[],
  unsettled: readonly StoredRow[],
  outcomes: StoreOutcome[],
): Promise<number[]> {
  const earlier = await earlierStrokes(
    pool,
    unsettled.map(({ n }) => {
      const { account_id: accountId, sender_id: senderId, key } = strokes[n].row;
      return { accountId, senderId, key };
    }),
  );
  const again: number[] = [];
  for (const [i, row] of unsettled.entries()) {
    const known = earlier.get(i);
    if (known !== undefined) outcomes[row.n] = { outcome: 'duplicate', strokeId: known };
    else if (!row.room_known) outcomes[row.n] = { outcome: 'unknown-room' };
    else if (row.unknown_sides.length > 0) {
      outcomes[row.n] = { outcome: 'unknown-sides', sides: row.unknown_sides };
    } else again.push(row.n);
  }
  return again;
}
