import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fastifyStatic from '@fastify/static';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { App } from '../appTypes.ts';
import { drawPage } from '../drawing/drawPage.ts';
import { loadDrawer } from '../drawing/loadDrawer.ts';
import { ProblemError } from '../problems.ts';

/** Where Vite builds them. */
export const PAGES = fileURLToPath(new URL('../../dashboards/dist/', import.meta.url));
const NOT_BUILT = 'The pages are not built here. Build them with: npm run prepare\n';
const YEAR_S = 31_536_000;
/** A page whose address mail programs post to as well (`unsubscribe.ts`): it is no unknown one. */
export const UNSUBSCRIBE = '/unsubscribe/:token';
const INDEX = 'index.html';
/** Where the index has the page's place. */
const PLACE = '<div id="app"></div>';

interface PagesOptions {
  /** Where the built pages are. */
  readonly folder: string;
  /** So long a visitor waits at most for the answers that a page is drawn from. */
  readonly drawnWithinMs: number;
}

/** The pages as files. Their names in `assets` change with their content, so those may be kept for ever. */
export async function pageRoutes(app: App, pages: PagesOptions): Promise<void> {
  const { folder } = pages;
  app.addHook('onRoute', (route) => {
    route.config = { ...route.config, access: 'public' };
    route.schema = { ...route.schema, hide: true };
  });
  await app.register(fastifyStatic, {
    root: folder,
    wildcard: true,
    redirect: false,
    // As the build compressed them.
    preCompressed: true,
    setHeaders: (reply, path) => {
      const kept = path.startsWith(join(folder, 'assets'))
        ? `public, max-age=${YEAR_S}, immutable`
        : 'no-cache';
      reply.header('cache-control', kept);
    },
  });
  // The first visitor is not to wait for it; what is wrong with it shows when it is needed.
  app.addHook('onListen', () => void loadDrawer(folder).catch(() => {}));
  app.get('/', (request, reply) => sendPage(app, pages, request, reply));
  app.get(UNSUBSCRIBE, (_request, reply) => sendEmptyPage(folder, reply));
}

/** A page, which finds out itself what its address names. Where somebody is signed in, it comes with its answer drawn. */
export async function sendPage(
  app: App,
  pages: PagesOptions,
  request: FastifyRequest,
  reply: FastifyReply,
): Promise<FastifyReply> {
  const page = await drawnIndex(app, pages, request).catch((error: unknown) => {
    request.log.error({ err: error }, 'a page could not be drawn and was sent empty');
    return null;
  });
  if (page === null) return sendEmptyPage(pages.folder, reply);
  return reply
    .code(200)
    .type('text/html; charset=utf-8')
    .header('cache-control', 'private, no-store')
    .send(page);
}

/** To whoever asked for a page where none is: the pages say so themselves. */
export async function sendMissingPage(folder: string, reply: FastifyReply): Promise<FastifyReply> {
  const index = join(folder, INDEX);
  if (!existsSync(index)) throw new ProblemError('not-found', 'There is nothing at this address.');
  return reply
    .code(404)
    .type('text/html; charset=utf-8')
    .header('cache-control', 'no-store')
    .send(await readFile(index, 'utf8'));
}

function sendEmptyPage(folder: string, reply: FastifyReply): FastifyReply {
  if (!existsSync(join(folder, INDEX)))
    return reply.code(200).type('text/plain; charset=utf-8').send(NOT_BUILT);
  return reply.code(200).sendFile(INDEX);
}

async function drawnIndex(
  app: App,
  { folder, drawnWithinMs }: PagesOptions,
  request: FastifyRequest,
): Promise<string | null> {
  const drawer = await loadDrawer(folder);
  const drawn = drawer === null ? null : await drawPage(app, drawer, request, drawnWithinMs);
  if (drawn === null || !existsSync(join(folder, INDEX))) return null;
  const index = await readFile(join(folder, INDEX), 'utf8');
  const [before, behind, ...more] = index.split(PLACE);
  if (behind === undefined || more.length > 0) throw new Error(`${INDEX} has not one place for a page.`);
  return `${before}<div id="app">${drawn.html}</div>${drawn.answersHtml}${behind}`;
}
