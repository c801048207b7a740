import { ask } from './benchPostgres.ts';

/**
 * Fills the account of the person with this address with a lot, by SQL: rooms at all verdicts, loggers, open warnings,
 * twenty strokes a room, and changed verdicts. Nothing of it is to be worked out.
 */
export async function fillLot(databaseUrl: string, email: string, coaches: number): Promise<void> {
  const [{ account }] = await ask(
    databaseUrl,
    'select account_id as account from directory where email = $1',
    [email],
  );
  for (const statement of STATEMENTS) await ask(databaseUrl, statement(coaches), [account]);
  await ask(databaseUrl, 'analyze');
}

const VERDICT = `(array['clear', 'clear', 'clear', 'learning', 'watch', 'service', 'stop'])[1 + (n * 7 + k * 3) % 7]`;
/** A UUID (version 7 by its marks) that follows from the name: the same for the same thing in every statement. */
const uuid = (name: string) => `overlay(overlay(md5(${name}) placing '7' from 13) placing '8' from 17)::uuid`;
const id = (what: string) => uuid(`'${what}' || n`);
const roomId = uuid(`'room' || n || '/' || k`);

const STATEMENTS: readonly ((coaches: number) => string)[] = [
  (coaches) => `insert into coaches (account_id, id, name, model, year)
    select $1, ${id('coach')}, 'Stock ' || lpad(n::text, 4, '0'), 'Model ' || n % 40, 2010 + n % 15
    from generate_series(1, ${coaches}) n`,
  (coaches) => `insert into loggers (account_id, id, coach_id, name, sensor, token_hash, last_seen_at)
    select $1, ${id('logger')}, ${id('coach')}, 'Logger ' || n, 'clamp', decode(md5(n::text), 'hex'),
      now() - make_interval(hours => n % 500)
    from generate_series(1, ${coaches}) n`,
  (coaches) => `insert into rooms (account_id, id, coach_id, name, drive, sides)
    select $1, ${roomId}, ${id('coach')}, (array['Living room', 'Bedroom', 'Kitchen'])[k], 'in-wall', '{front,rear}'
    from generate_series(1, ${coaches}) n, generate_series(1, 3) k`,
  (coaches) => `insert into room_results (account_id, room_id, summary)
    select $1, ${roomId}, jsonb_build_object('verdict', ${VERDICT},
      'headline', 'The running current of the front side is 28 % above this room''s own normal.')
    from generate_series(1, ${coaches}) n, generate_series(1, 3) k
    on conflict (account_id, room_id) do update set summary = excluded.summary`,
  (coaches) => `insert into strokes
      (account_id, id, room_id, sender_id, key, direction, started_at, placed_at, recorded_sides, has_supply, analysis)
    select $1, ${uuid(`'stroke' || n || '/' || k || '/' || s`)}, ${roomId}, ${id('logger')}, k || '/' || s, 'extend',
      now() - make_interval(days => s), now() - make_interval(days => s), '{front,rear}', true, '{}'
    from generate_series(1, ${coaches}) n, generate_series(1, 3) k, generate_series(1, 20) s`,
  (coaches) => `insert into warnings (account_id, id, room_id, kind, severity, opened_at, first_stroke_id,
      latest_stroke_id, headline, evidence, checks, cautions)
    select $1, ${uuid(`'warning' || n || '/' || k`)}, ${roomId}, 'rising-draw', ${VERDICT}, now(), ${roomId}, ${roomId},
      'It draws more.', '{}', '[]', '[]'
    from generate_series(1, ${coaches}) n, generate_series(1, 3) k where ${VERDICT} in ('watch', 'service', 'stop')`,
  (coaches) => `insert into verdict_changes (account_id, room_id, changed_at, verdict_before, verdict)
    select $1, ${roomId}, now() - interval '1 hour', 'clear', ${VERDICT}
    from generate_series(1, ${coaches}) n, generate_series(1, 3) k where n % 100 = 1 and ${VERDICT} <> 'clear'`,
];
