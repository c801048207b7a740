import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { startEmbeddedPostgres } from '../../server/database/embedded/startEmbeddedPostgres.ts';

export interface BenchPostgres {
  /** Makes a database and answers its URL. */
  newDatabase(name: string): Promise<string>;
}

/** Runs work on a Postgres of its own, as durable as the one that the service starts. */
export async function withPostgres<Result>(
  work: (postgres: BenchPostgres) => Promise<Result>,
): Promise<Result> {
  const folder = await mkdtemp(join(tmpdir(), 'slideload-bench-'));
  const postgres = await startEmbeddedPostgres(folder);
  const newDatabase = async (name: string) => {
    await ask(postgres.url, `create database ${name}`);
    const url = new URL(postgres.url);
    url.pathname = `/${name}`;
    return url.href;
  };
  try {
    return await work({ newDatabase });
  } finally {
    await postgres.stop();
    await rm(folder, { recursive: true });
  }
}

/** One query on a connection of its own. */
export async function ask(
  url: string,
  text: string,
  values: unknown[] = [],
): Promise<Record<string, unknown>[]> {
  const client = new pg.Client(url);
  await client.connect();
  try {
    return (await client.query(text, values)).rows;
  } finally {
    await client.end();
  }
}
