import { createAccount } from '../../server/access/people/createAccount.ts';
import { buildApp } from '../../server/app.ts';
import { migrate } from '../../server/database/migrate.ts';
import { inScope, openDatabase } from '../../server/database/openDatabase.ts';
import { plainOwnerUrl } from '../../server/database/plainOwnerUrl.ts';
import { prepareQueue } from '../../server/work/jobs/queue.ts';
import { startWorker } from '../../server/work/startWorker.ts';

/** The service as it runs, worker included, in a process of its own. Prints its address. */
const database = openDatabase(await plainOwnerUrl(process.env.DATABASE_URL ?? '', console.error));
await migrate(database);
await prepareQueue(database.pool);
const { db } = inScope(database, { spanning: 'first-account' });
await createAccount(db, { name: 'Bench', email: 'bench@example.com', password: 'a long enough secret' });
const app = await buildApp(database);
await startWorker({ pool: database.pool, log: app.log });
console.log(JSON.stringify({ url: await app.listen({ port: 0, host: '127.0.0.1' }) }));
