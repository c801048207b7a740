import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { App } from '../appTypes.ts';
import { loadDrawer } from '../drawing/loadDrawer.ts';
import { sendEmptyPage, sendPage } from '../drawing/sendPage.ts';

const YEAR_S = 31_536_000;
/** A page whose address mail programs post to as well (`unsubscribe.ts`): it is no unknown one. */
export const UNSUBSCRIBE = '/unsubscribe/:token';

/** The pages as files. Their names in `assets` change with their content, so those may be kept for ever. */
export async function pageRoutes(app: App): Promise<void> {
  const { folder } = app.pages;
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
  app.get('/', sendPage);
  app.get(UNSUBSCRIBE, (_request, reply) => sendEmptyPage(reply));
}
