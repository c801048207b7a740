import type { AddressInfo } from 'node:net';
import { hasAccounts } from './access/people/createAccount.ts';
import { createFirstAccount, newSetUpToken } from './access/people/setUp.ts';
import { answerNotYetReady } from './answerNotYetReady.ts';
import { buildApp } from './app.ts';
import type { App } from './appTypes.ts';
import { awaitPort } from './awaitPort.ts';
import type { Configuration } from './configuration.ts';
import { awaitDatabase } from './database/awaitDatabase.ts';
import { startEmbeddedPostgres } from './database/embedded/startEmbeddedPostgres.ts';
import { migrate } from './database/migrate.ts';
import { type Database, inScope, openDatabase } from './database/openDatabase.ts';
import { plainOwnerUrl } from './database/plainOwnerUrl.ts';
import { describeSignIn } from './demo/describeSignIn.ts';
import { fillDemo } from './demo/fillDemo.ts';
import { loggerTo } from './loggerTo.ts';
import { type Mailer, printingMailer, smtpMailer } from './mail/mailer.ts';
import { linkToBroker } from './mqtt/brokerLink.ts';
import { startTelling } from './notices/startTelling.ts';
import { OperatorError } from './operatorError.ts';
import { strokeStore } from './results/strokeStore.ts';
import { prepareQueue } from './work/jobs/queue.ts';
import { startTidying } from './work/jobs/tidy.ts';
import { startWorker } from './work/startWorker.ts';
import { buildWorkerApp } from './workerApp.ts';

/** Requests under way get this long to end once the service stops; then their connections are cut. */
const REQUESTS_END_WITHIN_MS = 3000;

const LOOPBACK = /^(localhost|127\.\d+\.\d+\.\d+|::1)$/;
const WITHOUT_TLS =
  'Listening beyond this machine without TLS: passwords and tokens can be read on the way unless a proxy with TLS stands in front.';
const WITHOUT_LINKS =
  'PUBLIC_URL is not set: messages from this process have no links, and none to end them by.';

interface StartOptions {
  /** Told while the embedded database ended by itself and cannot be started again yet. */
  readonly onTrouble: (reason: unknown) => void;
  /** Says to end: a start that waits for its database then waits no longer. */
  readonly endWanted?: AbortSignal;
}

/**
 * Starts everything in order, prints `ready` once it serves, and answers how to stop it all again. What was started
 * before something failed is stopped before the failure is passed on.
 */
export async function startService(
  configuration: Configuration,
  options: StartOptions,
): Promise<() => Promise<void>> {
  const stops: (() => Promise<void>)[] = [];
  const stop = async (): Promise<void> => {
    for (let next = stops.pop(); next !== undefined; next = stops.pop()) await next();
  };
  try {
    await start(configuration, options, stops);
  } catch (error) {
    await stop();
    throw error;
  }
  return stop;
}

async function start(
  configuration: Configuration,
  options: StartOptions,
  stops: (() => Promise<void>)[],
): Promise<void> {
  const url = await findDatabase(configuration, options, stops);
  let endWaiting = async (): Promise<void> => undefined;
  stops.push(() => endWaiting());
  const reached = await awaitDatabase(
    () => plainOwnerUrl(url, console.error),
    async (line) => {
      // Whoever reads the line can ask right away.
      endWaiting = await answerNotYetReady(configuration, console.error);
      console.error(line);
    },
    options.endWanted ?? new AbortController().signal,
  );
  const database = openDatabase(reached);
  stops.push(() => database.pool.end());
  await migrate(database);
  await prepareQueue(database.pool);

  const { role } = configuration;
  const mailer = mailerOf(configuration);
  stops.push(async () => mailer.close());
  const app = await (role === 'worker'
    ? buildWorker(database, configuration)
    : build(database, configuration, mailer));
  if (role !== 'web') await work(app, stops);
  stops.push(() => closeApp(app));
  if (role !== 'worker') await serve(app, configuration, stops);
  await endWaiting();
  const address = await listen(app, configuration);
  if (role !== 'worker') await greet(app, configuration, address);
  if (role !== 'web') tell(app, configuration, mailer, stops);
  console.log(`ready ${address}`);
}

function build(database: Database, configuration: Configuration, mailer: Mailer): Promise<App> {
  return buildApp(database, {
    logger: loggerOf(configuration),
    trustProxy: configuration.trustProxy,
    metricsToken: configuration.metricsToken,
    mailer,
    publicUrl: configuration.publicUrl ?? undefined,
    webhooksToPrivate: configuration.webhooksToPrivate,
    limits: configuration.limits,
  });
}

function buildWorker(database: Database, configuration: Configuration): Promise<App> {
  const { metricsToken } = configuration;
  return buildWorkerApp(database, { logger: loggerOf(configuration), metricsToken });
}

function loggerOf({ logLevel }: Configuration) {
  return loggerTo(logLevel, process.stderr);
}

/** Brings rooms up to date, and does what is due by the clock. */
async function work(app: App, stops: (() => Promise<void>)[]): Promise<void> {
  const worker = await startWorker({
    ...app.database,
    log: app.log,
    done: ({ rooms, seconds }) => {
      app.metrics.rooms.inc(rooms);
      app.metrics.analysed.observe(seconds);
    },
    setAside: () => app.metrics.setAside.inc(),
  });
  stops.push(() => worker.stop());
  const tidying = startTidying(app.database, app.log);
  stops.push(() => tidying.stop());
}

/** Tells people and programs. Of a process that serves no pages only `PUBLIC_URL` says where they are. */
function tell(
  app: App,
  { publicUrl, role, webhooksToPrivate }: Configuration,
  mailer: Mailer,
  stops: (() => Promise<void>)[],
): void {
  const { database, log, metrics } = app;
  if (role === 'worker' && publicUrl === null) log.warn(WITHOUT_LINKS);
  const telling = startTelling({
    pool: database.pool,
    mailer,
    publicUrl: () => (role === 'worker' ? (publicUrl ?? '') : app.publicUrl),
    webhooksToPrivate,
    log,
    count: (channel, outcome) => metrics.notices.inc({ channel, outcome }),
  });
  stops.push(() => telling.stop());
}

/** Makes what an empty installation begins with, and takes strokes from the broker where there is one. */
async function serve(app: App, configuration: Configuration, stops: (() => Promise<void>)[]): Promise<void> {
  if (configuration.broker !== null) {
    const { database, log, measurer } = app;
    const store = strokeStore(database, measurer);
    const broker = linkToBroker(configuration.broker, { database, store, log });
    stops.push(() => broker.stop());
  }
  await welcome(app, configuration);
}

/** Tells whoever started it where to go first. */
async function greet(app: App, { demo, host }: Configuration, address: string): Promise<void> {
  app.publicUrl ||= address;
  if (app.setUpToken !== null) console.log(`Make the first account at ${address}/set-up#${app.setUpToken}`);
  if (demo) console.log(await describeSignIn(app.database, address));
  if (!LOOPBACK.test(host)) app.log.warn(WITHOUT_TLS);
}

function mailerOf({ mail }: Configuration): Mailer {
  return mail === null ? printingMailer((text) => console.log(text)) : smtpMailer(mail.smtpUrl, mail.from);
}

async function findDatabase(
  { databaseUrl, dataDir }: Configuration,
  { onTrouble }: StartOptions,
  stops: (() => Promise<void>)[],
): Promise<string> {
  if (databaseUrl !== null) return databaseUrl;
  const postgres = await startEmbeddedPostgres(dataDir, { onTrouble });
  stops.push(() => postgres.stop());
  return postgres.url;
}

/**
 * Fills an empty database with the demo, or makes its first account where one is named; while there is nobody, opens
 * the set-up link.
 */
async function welcome(app: App, { admin, demo }: Configuration): Promise<void> {
  const person = admin && { ...admin, name: admin.email.replace(/@.*/, '') };
  if (await hasAccounts(inScope(app.database, { spanning: 'first-account' }).db)) return;
  if (demo) await fillDemo(app.database, new Date(), person);
  else if (person === null) app.setUpToken = newSetUpToken();
  else await createFirstAccount(app.database, person);
}

async function listen(app: App, { port, host }: Configuration): Promise<string> {
  await awaitPort(port, host);
  await app.listen({ port, host }).catch((cause: NodeJS.ErrnoException) => {
    const why = cause.code === 'EADDRINUSE' ? 'another program uses that port' : cause.message;
    throw new OperatorError(`Cannot listen on ${host}:${port}: ${why}.`, { cause });
  });
  // A TCP server that listens has an address of this kind.
  const bound = app.server.address() as AddressInfo;
  return `http://${host.includes(':') ? `[${host}]` : host}:${bound.port}`;
}

/** Takes no more requests and lets those under way end, for a while. */
async function closeApp(app: App): Promise<void> {
  const timer = setTimeout(() => app.server.closeAllConnections(), REQUESTS_END_WITHIN_MS);
  await app.close().finally(() => clearTimeout(timer));
}
