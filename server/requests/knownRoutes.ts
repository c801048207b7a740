import type { FastifyReply, FastifyRequest } from 'fastify';
import type { App } from '../appTypes.ts';
import { sendMissingPage, sendPage } from '../drawing/sendPage.ts';
import { notFound, ProblemError } from '../problems.ts';
import { sendProblem } from './errorHandler.ts';
import { isPageAddress } from './pageAddresses.ts';
import { readsPages } from './pageReader.ts';

interface KnownRoute {
  readonly address: RegExp;
  readonly methods: Set<string>;
}

/** Every address of the application with its methods, so that a wrong method can be told from a wrong address. */
type KnownRoutes = Map<string, KnownRoute>;

export function rememberRoutes(app: App): void {
  const routes: KnownRoutes = new Map();
  app.addHook('onRoute', ({ url, method }) => {
    if (url.includes('*')) return;
    const address = new RegExp(`^${url.replaceAll('.', '\\.').replaceAll(/:\w+/g, '[^/]+')}/?$`);
    const known = routes.get(url) ?? { address, methods: new Set() };
    for (const each of [method].flat()) known.methods.add(each);
    routes.set(url, known);
  });
  app.decorate('knownRoutes', routes);
}

declare module 'fastify' {
  interface FastifyInstance {
    knownRoutes: KnownRoutes;
  }
}

const ASKING = 'OPTIONS';

/**
 * 405 where another method would do, and which ones where that is asked. Where the address is known but for an id too long to be one, 404. The pages have
 * addresses of their own; any other is 404, said on a page to whoever wants to read one.
 */
export function answerUnknownRoute(
  request: FastifyRequest,
  reply: FastifyReply,
): FastifyReply | Promise<FastifyReply> {
  const path = request.url.split('?', 1)[0] ?? '';
  const methods = [...request.server.knownRoutes.values()]
    .filter((route) => route.address.test(path))
    .flatMap((route) => [...route.methods]);
  if (methods.includes(request.method)) return sendProblem(reply, notFound('thing'));
  if (methods.length > 0) {
    const inOrder = (names: readonly string[]) => [...new Set(names)].sort().join(', ');
    const allow = inOrder([...methods, ASKING]);
    if (request.method === ASKING) return reply.code(204).header('allow', allow).send();
    return sendProblem(
      reply,
      new ProblemError('method-not-allowed', `Use ${inOrder(methods)}.`, { headers: { allow } }),
    );
  }
  const isRead = ['GET', 'HEAD'].includes(request.method);
  if (isRead && isPageAddress(path)) return sendPage(request, reply);
  if (readsPages(request)) return sendMissingPage(reply);
  return sendProblem(reply, new ProblemError('not-found', 'There is nothing at this address.'));
}
