import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fastifyStatic from '@fastify/static';
import type { FastifyReply } from 'fastify';
import type { App } from '../appTypes.ts';

/** Where Vite builds them. */
export const PAGES = fileURLToPath(new URL('../../dashboards/dist/', import.meta.url));
const NOT_BUILT = 'The pages are not built here. Build them with: npm run prepare\n';
const YEAR_S = 31_536_000;
/** A page whose address mail programs post to as well (`unsubscribe.ts`): it is no unknown one. */
export const UNSUBSCRIBE = '/unsubscribe/:token';

/** The pages as files. Their names in `assets` change with their content, so those may be kept for ever. */
export async function pageRoutes(app: App, { folder }: { folder: string }): Promise<void> {
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
  app.get(UNSUBSCRIBE, (_request, reply) => sendPage(folder, reply));
}

/** Any address that is no file is an address of the pages, which find out themselves what it names. */
export function sendPage(folder: string, reply: FastifyReply): FastifyReply {
  if (!existsSync(join(folder, 'index.html')))
    return reply.code(200).type('text/plain; charset=utf-8').send(NOT_BUILT);
  return reply.code(200).sendFile('index.html');
}
