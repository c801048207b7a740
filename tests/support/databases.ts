import { randomUUID } from 'node:crypto';
import pg from 'pg';

/** The same server, another database. */
function databaseUrl(serverUrl: string, database: string): string {
  const url = new URL(serverUrl);
  url.pathname = `/${database}`;
  return url.href;
}

/** Makes a database of its own, as a copy of `template` or empty, and answers how to reach and to drop it. */
export async function createDatabase(
  serverUrl: string,
  template?: string,
): Promise<{ url: string; drop(): Promise<void> }> {
  const name = `slideload_test_${randomUUID().replaceAll('-', '')}`;
  const copied = template === undefined ? '' : ` template ${template}`;
  await ask(serverUrl, `create database ${name}${copied}`);
  return {
    url: databaseUrl(serverUrl, name),
    drop: () => ask(serverUrl, `drop database ${name} with (force)`),
  };
}

async function ask(serverUrl: string, statement: string): Promise<void> {
  const client = new pg.Client(serverUrl);
  await client.connect();
  await client.query(statement).finally(() => client.end());
}
