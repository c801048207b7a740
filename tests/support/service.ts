import { randomUUID } from 'node:crypto';
import { inject } from 'vitest';
import { addPerson } from '../../server/access/people/addPerson.ts';
import { createAccount } from '../../server/access/people/createAccount.ts';
import { buildApp } from '../../server/app.ts';
import type { App } from '../../server/appTypes.ts';
import { type Database, openDatabase } from '../../server/database/openDatabase.ts';
import { plainOwnerUrl } from '../../server/database/plainOwnerUrl.ts';
import type { Limits } from '../../server/limits/limits.ts';
import type { Mailer } from '../../server/mail/mailer.ts';
import type { Person, Role } from '../../server/schemas/session.ts';
import { startWorker } from '../../server/work/startWorker.ts';
import { createDatabase } from './databases.ts';
import { newSessionOf } from './newSessionOf.ts';
import { type Answer, type RequestOptions, sendRequest } from './request.ts';

/** Who every service is born with. */
export const FIRST_PERSON = { email: 'mara@example.com', password: 'a long enough secret', name: 'Mara' };

export interface Member {
  readonly person: Person;
  readonly email: string;
  readonly password: string;
  readonly token: string;
}

/** A real service on a database of its own, listening on the loopback interface, its worker running. */
export interface TestService extends Database {
  readonly url: string;
  readonly databaseUrl: string;
  readonly app: App;
  /** Sends to `/api/v1` + path, unless the path begins with another root. */
  request(method: string, path: string, options?: RequestOptions): Promise<Answer>;
  /** The same as whoever holds the token. */
  as(token: string, method: string, path: string, body?: unknown): Promise<Answer>;
  /** Signs in, as the first person when nobody is named, and answers the token. */
  signIn(email?: string, password?: string): Promise<string>;
  /** Another account with one dealer, who is signed in: a stranger to the first. */
  newAccount(): Promise<Member>;
  /** One more person of a member's account, signed in. */
  newMember(of: { person: Person }, role: Role): Promise<Member>;
  stop(): Promise<void>;
}

export interface ServiceOptions {
  /** False leaves the worker out: nothing is analysed. */
  readonly worker?: boolean;
  /** False leaves the database without anybody. */
  readonly firstPerson?: boolean;
  readonly setUpToken?: string;
  /** Links of loggers are dropped when they were silent for so long. */
  readonly linkSilentAfterMs?: number;
  /** Where messages go; unless said, into a log that nobody reads. */
  readonly mailer?: Mailer;
  readonly publicUrl?: string;
  /** Whether webhooks may lead to this machine. */
  readonly webhooksToPrivate?: boolean;
  readonly limits?: Partial<Limits>;
  /** What pages are drawn from may take so long; unless said, longer than any machine is busy. */
  readonly pagesDrawnWithinMs?: number;
  /** One that is migrated already, to be dropped in the end; unless said, an empty one. */
  readonly database?: { readonly url: string; drop(): Promise<void> };
}

export async function startService(options: ServiceOptions = {}): Promise<TestService> {
  const database =
    options.database ?? (await createDatabase(inject('postgresUrl'), inject('postgresTemplate')));
  const url = await plainOwnerUrl(database.url, console.error);
  const served = openDatabase(url);
  // A test looks at the rows of everybody.
  const { pool, db } = openDatabase(url, 5, { itsOwn: { spanning: 'migrating' } });
  const app = await buildApp(served, {
    setUpToken: options.setUpToken ?? null,
    linkSilentAfterMs: options.linkSilentAfterMs,
    mailer: options.mailer,
    publicUrl: options.publicUrl,
    webhooksToPrivate: options.webhooksToPrivate,
    limits: options.limits,
    pagesDrawnWithinMs: options.pagesDrawnWithinMs ?? 10_000,
  });
  if (options.firstPerson !== false) await createAccount(db, FIRST_PERSON);
  const worker = options.worker === false ? null : await startWorker({ pool: served.pool, log: app.log });
  const address = await app.listen({ port: 0, host: '127.0.0.1' });

  const request: TestService['request'] = (method, path, sent) => sendRequest(address, method, path, sent);
  const signIn = async (email = FIRST_PERSON.email, password = FIRST_PERSON.password): Promise<string> => {
    const answer = await request('POST', '/session', { body: { email, password } });
    if (answer.status !== 200) throw new Error(`Signing in was refused: ${answer.text}`);
    return answer.body.token;
  };
  const signedIn = async (person: Person, password: string): Promise<Member> => ({
    person,
    email: person.email,
    password,
    token: await newSessionOf({ pool, db }, person),
  });

  return {
    url: address,
    databaseUrl: database.url,
    app,
    pool,
    db,
    request,
    as: (token, method, path, body) => request(method, path, { token, body }),
    signIn,
    newAccount: async () => {
      const email = `${randomUUID()}@example.com`;
      const password = `secret ${randomUUID()}`;
      return signedIn(await createAccount(db, { name: 'Stranger', email, password }), password);
    },
    newMember: async (of, role) => {
      const password = `secret ${randomUUID()}`;
      const email = `${randomUUID()}@example.com`;
      return signedIn(
        await addPerson(db, of.person.accountId, { name: role, email, password, role }),
        password,
      );
    },
    stop: async () => {
      await worker?.stop();
      await app.close();
      await pool.end();
      await served.pool.end();
      await database.drop();
    },
  };
}
