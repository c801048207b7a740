import type { ClientBase } from 'pg';

// Of `pg_stat_activity` a role sees no other role's waiting, and a transaction sees again what it saw at first.
const WAITING = `select pid from pg_locks group by pid having not bool_and(granted)
  and bool_or(database = (select oid from pg_database where datname = current_database()))`;

/** Until at least so many statements in the client's database wait for what another holds. */
export async function untilSomebodyWaits(client: ClientBase, count = 1): Promise<void> {
  while ((await client.query(WAITING)).rows.length < count);
}
