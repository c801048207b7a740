import { type Kysely, sql } from 'kysely';

/**
 * At what rates a stroke's samples were sent stands in its row: whoever asks for the stroke is told what was sent less
 * the samples, and those need not be read for it. Strokes from before tell no rate.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of STATEMENTS) await sql.raw(statement).execute(db);
}

const STATEMENTS = [
  'alter table strokes add column side_rates_hz double precision[], add column supply_rate_hz double precision',
  "comment on column strokes.side_rates_hz is 'By recorded side; null where times were sent'",
];
