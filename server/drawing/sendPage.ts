import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { ProblemError } from '../problems.ts';
import { drawPage } from './drawPage.ts';
import { loadDrawer } from './loadDrawer.ts';

/** Where Vite builds them: seen from here, and from `dist` where this is built, the same way up. */
export const BUILT_PAGES = fileURLToPath(new URL('../../dashboards/dist/', import.meta.url));
const NOT_BUILT = 'The pages are not built here. Build them with: npm run prepare\n';
const INDEX = 'index.html';
/** Where the index has the page's place. */
const PLACE = '<div id="app"></div>';

interface Pages {
  /** Where the built pages are. */
  readonly folder: string;
  /** So long a visitor waits at most for the answers that a page is drawn from. */
  readonly drawnWithinMs: number;
}

declare module 'fastify' {
  interface FastifyInstance {
    pages: Pages;
  }
}

/** A page, which finds out itself what its address names. Where somebody is signed in, it comes with its answer drawn. */
export async function sendPage(request: FastifyRequest, reply: FastifyReply): Promise<FastifyReply> {
  const page = await drawnIndex(request).catch((error: unknown) => {
    request.log.error({ err: error }, 'a page could not be drawn and was sent empty');
    return null;
  });
  if (page === null) return sendEmptyPage(reply);
  return reply
    .code(200)
    .type('text/html; charset=utf-8')
    .header('cache-control', 'private, no-store')
    .send(page);
}

/** To whoever asked for a page where none is: the pages say so themselves. */
export async function sendMissingPage(reply: FastifyReply): Promise<FastifyReply> {
  const index = indexOf(reply.server.pages);
  if (!existsSync(index)) throw new ProblemError('not-found', 'There is nothing at this address.');
  return reply
    .code(404)
    .type('text/html; charset=utf-8')
    .header('cache-control', 'no-store')
    .send(await readFile(index, 'utf8'));
}

/** A page with nobody's answers in it. */
export function sendEmptyPage(reply: FastifyReply): FastifyReply {
  if (!existsSync(indexOf(reply.server.pages)))
    return reply.code(200).type('text/plain; charset=utf-8').send(NOT_BUILT);
  return reply.code(200).sendFile(INDEX);
}

async function drawnIndex(request: FastifyRequest): Promise<string | null> {
  const { pages } = request.server;
  const drawer = await loadDrawer(pages.folder);
  const drawn = drawer === null ? null : await drawPage(drawer, request, pages.drawnWithinMs);
  if (drawn === null || !existsSync(indexOf(pages))) return null;
  const index = await readFile(indexOf(pages), 'utf8');
  const [before, behind, ...more] = index.split(PLACE);
  if (behind === undefined || more.length > 0) throw new Error(`${INDEX} has not one place for a page.`);
  return `${before}<div id="app">${drawn.html}</div>${drawn.answersHtml}${behind}`;
}

function indexOf({ folder }: Pages): string {
  return join(folder, INDEX);
}
