import { type Kysely, sql } from 'kysely';
import type { Tables } from '../../../migrations/tables.ts';
import type { FoldedHistory } from '../judging/foldHistory.ts';
import type { RoomToAnalyse } from '../reading/readRoom.ts';

const ROWS_AT_A_TIME = 1000;

type MeasuresOfRooms = readonly {
  readonly room: RoomToAnalyse;
  readonly folded: Pick<FoldedHistory, 'strokeIds' | 'measures'>;
}[];

/** By stroke, not by time: a stroke that was moved to another time leaves no row behind. */
export async function writeMeasures(trx: Kysely<Tables>, rooms: MeasuresOfRooms): Promise<void> {
  const strokes = rooms.flatMap(({ room, folded }) =>
    folded.strokeIds.map((id) => ({ accountId: room.accountId, id })),
  );
  for (let i = 0; i < strokes.length; i += ROWS_AT_A_TIME) {
    const some = strokes.slice(i, i + ROWS_AT_A_TIME);
    await sql`
      delete from measures m
      using unnest(${some.map((one) => one.accountId)}::uuid[], ${some.map((one) => one.id)}::uuid[])
        as x (account_id, stroke_id)
      where m.account_id = x.account_id and m.stroke_id = x.stroke_id
    `.execute(trx);
  }
  const rows = rooms.flatMap(({ room, folded }) =>
    folded.measures.map((row) => ({ account_id: room.accountId, room_id: room.roomId, ...row })),
  );
  for (let i = 0; i < rows.length; i += ROWS_AT_A_TIME) {
    await sql`
      insert into measures
        (account_id, room_id, side, direction, placed_at, stroke_id, value, expected, adjusted, beyond)
      select * from json_to_recordset(${JSON.stringify(rows.slice(i, i + ROWS_AT_A_TIME))}::json) as x (
        account_id uuid, room_id uuid, side text, direction text, placed_at timestamptz, stroke_id uuid,
        value double precision[], expected real[], adjusted real[], beyond integer
      )
    `.execute(trx);
  }
}
