import { createAccount } from '../../server/access/createAccount.ts';
import { buildApp } from '../../server/app.ts';
import { migrate } from '../../server/database/migrate.ts';
import { openDatabase } from '../../server/database/openDatabase.ts';
import { prepareQueue, startWorker } from '../../server/work/queue.ts';

/** The service as it runs, worker included, in a process of its own. Prints its address. */
const { pool, db } = openDatabase(process.env.DATABASE_URL ?? '');
await migrate(db);
await prepareQueue(pool);
await createAccount(db, { name: 'Bench', email: 'bench@example.com', password: 'a long enough secret' });
const app = await buildApp({ pool, db });
await startWorker({ pool, db, log: app.log });
console.log(JSON.stringify({ url: await app.listen({ port: 0, host: '127.0.0.1' }) }));
