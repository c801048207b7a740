import type { Queries } from './queries.ts';

/** By what a stroke is known again. */
export interface SentKey {
  readonly accountId: string;
  readonly senderId: string;
  readonly key: string;
}

/** The ids of strokes that were sent before, by their place among those asked for; removed ones too. */
export async function earlierStrokes(
  pool: Queries,
  asked: readonly SentKey[],
): Promise<ReadonlyMap<number, string>> {
  const { rows } = await pool.query<{ place: number; id: string }>({
    text: `with i as (
        select * from unnest($1::uuid[], $2::uuid[], $3::text[]) with ordinality as i (account_id, sender_id, key, place)
      )
      select i.place::integer, s.id from i
      join strokes s on s.account_id = i.account_id and s.sender_id = i.sender_id and s.key = i.key
      union all
      select i.place::integer, d.stroke_id from i
      join removed_strokes d on d.account_id = i.account_id and d.sender_id = i.sender_id and d.key = i.key`,
    values: [asked.map((i) => i.accountId), asked.map((i) => i.senderId), asked.map((i) => i.key)],
  });
  // Postgres counts from 1.
  return new Map(rows.map(({ place, id }) => [place - 1, id]));
}
