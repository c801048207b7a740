import pg from 'pg';
import { inject } from 'vitest';
import { type ChildService, startChild } from './childService.ts';
import { createDatabase } from './databases.ts';
import { type RequestOptions, sendRequest } from './request.ts';

const ADMIN = { ADMIN_EMAIL: 'mara@example.com', ADMIN_PASSWORD: 'a long enough secret' };

/** The service as a process of its own on a database of its own, to be killed and started again on the same port. */
export interface ChildOnDatabase {
  readonly url: string;
  readonly databaseUrl: string;
  request(method: string, path: string, options?: RequestOptions): ReturnType<typeof sendRequest>;
  signIn(): Promise<string>;
  /** Asks its database until the question is answered with a row. */
  until(question: string): Promise<void>;
  /** Kills it in whatever it does. */
  kill(): Promise<void>;
  start(): Promise<void>;
  stop(): Promise<void>;
}

export async function childOnDatabase(
  environment: Readonly<Record<string, string>> = {},
): Promise<ChildOnDatabase> {
  const database = await createDatabase(inject('postgresUrl'), inject('postgresTemplate'));
  const settings = { ...ADMIN, DATABASE_URL: database.url, ...environment };
  let child: ChildService = startChild(settings, 'node');
  const url = await child.ready;
  const { port } = new URL(url);
  const request: ChildOnDatabase['request'] = (method, path, options) =>
    sendRequest(url, method, path, options);
  const kill = async () => {
    if (child.child.exitCode === null && child.child.signalCode === null) child.signalGroup('SIGKILL');
    await child.exited;
  };
  return {
    url,
    databaseUrl: database.url,
    request,
    signIn: async () => {
      const body = { email: ADMIN.ADMIN_EMAIL, password: ADMIN.ADMIN_PASSWORD };
      return (await request('POST', '/session', { body })).body.token;
    },
    until: async (question) => {
      const client = new pg.Client(database.url);
      await client.connect();
      while ((await client.query(question)).rowCount === 0);
      await client.end();
    },
    kill,
    start: async () => {
      child = startChild({ ...settings, PORT: port }, 'node');
      await child.ready;
    },
    stop: async () => {
      await kill();
      await database.drop();
    },
  };
}
