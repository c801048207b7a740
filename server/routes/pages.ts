import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fastifyStatic from '@fastify/static';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { App } from '../appTypes.ts';

const PAGES = fileURLToPath(new URL('../../dashboards/dist/', import.meta.url));
const NOT_BUILT = 'The pages are not built here. Build them with: npm run prepare\n';
const YEAR_S = 31_536_000;

/** The pages as files. Their names in `assets` change with their content, so those may be kept for ever. */
export async function pageRoutes(app: App): Promise<void> {
  app.addHook('onRoute', (route) => {
    route.config = { ...route.config, access: 'public' };
    route.schema = { ...route.schema, hide: true };
  });
  await app.register(fastifyStatic, {
    root: PAGES,
    wildcard: true,
    redirect: false,
    setHeaders: (reply, path) => {
      const kept = path.includes('/dist/assets/') ? `public, max-age=${YEAR_S}, immutable` : 'no-cache';
      reply.header('cache-control', kept);
    },
  });
}

/** Any address that is no file is an address of the pages, which find out themselves what it names. */
export async function sendPage(_request: FastifyRequest, reply: FastifyReply): Promise<FastifyReply> {
  if (!existsSync(`${PAGES}index.html`))
    return reply.code(200).type('text/plain; charset=utf-8').send(NOT_BUILT);
  return reply.code(200).sendFile('index.html');
}
