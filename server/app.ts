import { constants } from 'node:zlib';
import compress from '@fastify/compress';
import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import fastify, { type FastifyServerOptions, type RouteOptions } from 'fastify';
import { serializerCompiler, type ZodTypeProvider } from 'fastify-type-provider-zod';
import { authenticate } from './access/callers/authenticate.ts';
import { giveDatabase } from './access/callers/databaseOfCaller.ts';
import { holdToRole } from './access/scopes/holdToRole.ts';
import type { App } from './appTypes.ts';
import type { Database } from './database/openDatabase.ts';
import { BUILT_PAGES } from './drawing/sendPage.ts';
import { limitAnswers } from './limits/limitAnswers.ts';
import { limitBodies } from './limits/limitBodies.ts';
import { limitSenders } from './limits/limitSenders.ts';
import { DEFAULT_LIMITS, type Limits } from './limits/limits.ts';
import { SteadyStore } from './limits/steadyStore.ts';
import { webSockets } from './live/webSockets.ts';
import { type Mailer, printingMailer } from './mail/mailer.ts';
import { measureApp } from './metrics/measureApp.ts';
import { describeProblems } from './openApi/describeProblems.ts';
import { creates, openApi } from './openApi/openApi.ts';
import { answerBrokenRequest } from './requests/answerBrokenRequest.ts';
import { checkHead } from './requests/checkHead.ts';
import { refuseInvalid } from './requests/createOnce.ts';
import { answerProblem } from './requests/errorHandler.ts';
import { ignoreUpgrades, UPGRADE_TO_WEBSOCKETS_ONLY } from './requests/ignoreUpgrades.ts';
import { answerUnknownRoute, rememberRoutes } from './requests/knownRoutes.ts';
import { lingerBehind } from './requests/lingerBehind.ts';
import { answerError } from './requests/pageReader.ts';
import { readableAddress } from './requests/readableAddress.ts';
import { refuseUnstorableText } from './requests/refuseUnstorableText.ts';
import { refuseUpgrades } from './requests/refuseUpgrades.ts';
import { decompressBody } from './requests/requestBodies.ts';
import { SECURITY_HEADERS } from './requests/securityHeaders.ts';
import { successStatus } from './requests/successStatus.ts';
import { takeJson } from './requests/takeJson.ts';
import { tidyQuery } from './requests/tidyQuery.ts';
import { validateWithZod } from './requests/validation.ts';
import { Comparer } from './results/comparing/comparer.ts';
import { healthRoutes } from './routes/health.ts';
import { apiRoutes } from './routes/index.ts';
import { type MetricsOptions, metricsRoutes } from './routes/metrics.ts';
import { pageRoutes } from './routes/pages.ts';
import type { StrokesLiveOptions } from './routes/strokesLive.ts';
import { unsubscribeRoutes } from './routes/unsubscribe.ts';
import { EarlyMeasurer } from './work/measuring/earlyMeasurer.ts';

interface AppOptions extends StrokesLiveOptions, MetricsOptions {
  readonly logger?: FastifyServerOptions['logger'];
  /** Whose word on the client's address and scheme is taken: a proxy on this machine, unless said otherwise. */
  readonly trustProxy?: string;
  /** The secret of the set-up link; null when there is somebody already. */
  readonly setUpToken?: string | null;
  /** Where messages to people go; unless said, nowhere but into the log. */
  readonly mailer?: Mailer;
  /** What people reach the service at, for links in messages; unless said, where it listens. */
  readonly publicUrl?: string;
  /** Whether webhooks may lead to addresses that are not public. */
  readonly webhooksToPrivate?: boolean;
  /** Where the built pages are, unless where Vite puts them. */
  readonly pagesFolder?: string;
  /** So long a visitor waits at most for what a page is drawn from. */
  readonly pagesDrawnWithinMs?: number;
  /** Those that are not named are the usual ones. */
  readonly limits?: Partial<Limits>;
}

/** A database that stands still without a word lets no request hang for ever. */
const ANSWER_WITHIN_MS = 60_000;
/** With answers that take longer an empty page is quicker: its visitor sees the last ones that the device has. */
const DRAWN_WITHIN_MS = 1000;
const LOOK_AT_CONNECTIONS_EVERY_MS = 2000;
const JSON_BODY_LIMIT_BYTES = 1024 * 1024;
/**
 * Answers are numbers and ids, which gain nothing by more effort: Brotli takes a sixth of the time of its usual quality,
 * gzip three fifths, for as many bytes to within a tenth. A long one comes out in few large pieces: each goes through a
 * thread of its own and the whole of the way to the client.
 */
const PIECE_BYTES = 64 * 1024;
const QUICK_COMPRESSION = {
  brotliOptions: { chunkSize: PIECE_BYTES, params: { [constants.BROTLI_PARAM_QUALITY]: 1 } },
  zlibOptions: { chunkSize: PIECE_BYTES, level: 1 },
};

/** The whole web application on an open database, not yet listening. */
export async function buildApp(database: Database, options: AppOptions = {}): Promise<App> {
  const limits = { ...DEFAULT_LIMITS, ...options.limits };
  const app: App = fastify({
    logger: options.logger ?? false,
    trustProxy: options.trustProxy ?? 'loopback',
    bodyLimit: JSON_BODY_LIMIT_BYTES,
    ...timeoutsOf(limits),
    frameworkErrors: answerProblem,
    clientErrorHandler: answerBrokenRequest,
    routerOptions: { maxParamLength: 500 },
    return503OnClosing: false,
    rewriteUrl: readableAddress,
  }).withTypeProvider<ZodTypeProvider>();

  app.decorate('database', database);
  app.decorate('limits', limits);
  app.decorate('setUpToken', options.setUpToken ?? null);
  const measurer = new EarlyMeasurer();
  app.decorate('measurer', measurer);
  app.addHook('onClose', () => measurer.stop());
  const comparer = new Comparer();
  app.decorate('comparer', comparer);
  app.addHook('onClose', () => comparer.stop());
  app.decorate('mailer', options.mailer ?? printingMailer((text) => app.log.info(text)));
  app.decorate('publicUrl', options.publicUrl ?? '');
  app.decorate('pages', {
    folder: options.pagesFolder ?? BUILT_PAGES,
    drawnWithinMs: options.pagesDrawnWithinMs ?? DRAWN_WITHIN_MS,
  });
  app.decorateRequest('caller', null);
  giveDatabase(app);
  app.setValidatorCompiler(validateWithZod);
  app.setSerializerCompiler(serializerCompiler);
  app.setErrorHandler(answerError);
  app.server.maxConnections = limits.connections;
  await app.register(limitBodies, limits);
  takeJson(app);

  await app.register(measureApp);
  await app.register(checkHead);
  await app.register(lingerBehind, limits);
  rememberRoutes(app);
  app.addHook('onRoute', (route) => {
    // The clock of an answer begins with the request: a body may take its time on the way.
    if (mayHaveBody(route)) route.handlerTimeout = ANSWER_WITHIN_MS + limits.bodyAtMostMs + limits.waitMs;
  });
  app.addHook('onRoute', (route) => {
    // A key that has an answer brings it whatever the body.
    if (creates(route)) route.attachValidation = true;
  });
  app.addHook('preHandler', refuseInvalid);
  app.addHook('onRoute', describeProblems);
  await app.register(successStatus);
  await app.register(helmet, SECURITY_HEADERS);
  await app.register(cookie);
  await app.register(rateLimit, { global: false, store: SteadyStore });
  // Before it is compressed: what waits are its own bytes.
  await app.register(limitAnswers, limits);
  await app.register(compress, { globalDecompression: false, ...QUICK_COMPRESSION });
  await app.register(webSockets);
  await app.register(refuseUpgrades);
  await app.register(ignoreUpgrades);
  await app.register(openApi);

  app.addHook('onRequest', (request) => authenticate(database, request));
  await app.register(limitSenders, limits);
  app.addHook('onRequest', (request) => holdToRole(database, request));
  app.addHook('preParsing', decompressBody);
  app.addHook('preValidation', tidyQuery);
  app.addHook('preValidation', refuseUnstorableText);

  await app.register(healthRoutes);
  await app.register(metricsRoutes, options);
  await app.register(apiRoutes, options);
  await app.register(unsubscribeRoutes);
  await app.register(pageRoutes);
  app.setNotFoundHandler(answerUnknownRoute);
  return app;
}

function mayHaveBody({ method }: RouteOptions): boolean {
  return !['GET', 'HEAD'].includes(String(method));
}

/** Of the server: whoever is slow is cut off, and no answer takes for ever once the request is there. */
function timeoutsOf({ headersWithinMs, bodyAtMostMs, waitMs }: Limits) {
  const requestWithinMs = headersWithinMs + bodyAtMostMs + waitMs;
  return {
    http: {
      // Asked for by `checkHead`, in our words.
      requireHostHeader: false,
      ...UPGRADE_TO_WEBSOCKETS_ONLY,
      headersTimeout: headersWithinMs,
      requestTimeout: requestWithinMs,
      connectionsCheckingInterval: Math.min(LOOK_AT_CONNECTIONS_EVERY_MS, headersWithinMs),
    },
    requestTimeout: requestWithinMs,
    handlerTimeout: ANSWER_WITHIN_MS,
  };
}

declare module 'fastify' {
  interface FastifyInstance {
    limits: Limits;
    setUpToken: string | null;
    mailer: Mailer;
    /** Measures strokes before they are stored. */
    measurer: EarlyMeasurer;
    comparer: Comparer;
    /** Without a slash at its end. */
    publicUrl: string;
  }
}
