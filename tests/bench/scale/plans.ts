import pg from 'pg';

/** How a statement reads one of the tables that grow. */
export interface Plan {
  readonly statement: string;
  /** What it took each time. */
  readonly ms: number;
  /** Why the server could not plan it without its parameters' types; then nothing is known of it. */
  readonly problem: string | null;
  /** Indexes that it goes by. */
  readonly indexes: readonly string[];
  /** Tables that it reads from end to end. */
  readonly wholeTables: readonly string[];
}

interface PlanNode {
  readonly 'Node Type': string;
  readonly 'Relation Name'?: string;
  readonly 'Index Name'?: string;
  readonly Plans?: readonly PlanNode[];
}

/** What can be planned: other statements read no rows. */
const PLANNABLE = /^\s*(with|select|insert|update|delete)\b/i;

/** Forgets what was asked so far. Needs `pg_stat_statements`, and a superuser. */
export async function beginListening(client: pg.Client): Promise<void> {
  await client.query('create extension if not exists pg_stat_statements');
  await client.query('select pg_stat_statements_reset()');
}

/**
 * Plans of all statements that the service asked since then. The server plans them anew for parameters that it does not
 * know (`explain (generic_plan)`), as a role that the second lock binds: its conditions are in the plan.
 */
export async function plansHeard(client: pg.Client, role: string): Promise<Plan[]> {
  const { rows } = await client.query<{ query: string; ms: number }>(
    `select s.query, s.mean_exec_time as ms from pg_stat_statements s join pg_roles r on r.oid = s.userid
     where s.dbid = (select oid from pg_database where datname = current_database()) and r.rolname = $1`,
    [role],
  );
  const plans: Plan[] = [];
  await client.query(`set role ${role}`);
  for (const { query, ms } of rows) {
    if (!PLANNABLE.test(query)) continue;
    const { nodes, problem } = await planOf(client, query);
    plans.push({
      statement: query.replaceAll(/\s+/g, ' ').trim(),
      ms,
      problem,
      indexes: unique(nodes.map((node) => node['Index Name'])),
      wholeTables: unique(
        nodes.filter((node) => node['Node Type'] === 'Seq Scan').map((node) => node['Relation Name']),
      ),
    });
  }
  await client.query('reset role');
  return plans;
}

async function planOf(
  client: pg.Client,
  query: string,
): Promise<{ nodes: PlanNode[]; problem: string | null }> {
  try {
    const { rows } = await client.query(`explain (generic_plan, format json) ${query}`);
    return { nodes: nodesOf(rows[0]['QUERY PLAN'][0].Plan), problem: null };
  } catch (error) {
    if (!(error instanceof pg.DatabaseError)) throw error;
    return { nodes: [], problem: error.message };
  }
}

function nodesOf(node: PlanNode): PlanNode[] {
  return [node, ...(node.Plans ?? []).flatMap(nodesOf)];
}

function unique(names: readonly (string | undefined)[]): string[] {
  return [...new Set(names.filter((name) => name !== undefined))];
}

/** Tables with so many rows that to read them whole is not to be. */
export async function grownTables(client: pg.Client, rows: number): Promise<Set<string>> {
  const { rows: found } = await client.query<{ relname: string }>(
    `select relname from pg_class where relkind in ('r', 'p') and relnamespace = current_schema::regnamespace
       and reltuples >= $1`,
    [rows],
  );
  return new Set(found.map(({ relname }) => relname));
}
