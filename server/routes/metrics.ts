import { timingSafeEqual } from 'node:crypto';
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { App } from '../appTypes.ts';
import { notFound } from '../problems.ts';

export interface MetricsOptions {
  /** What whoever reads must send as a bearer token; null: whoever asks from this machine, without a proxy, may. */
  readonly metricsToken?: string | null;
}

const LOOPBACK = /^(127\.|::1$|::ffff:127\.)/;

/** What the process counts about itself, in the text form of Prometheus. For whoever may not, it is not there. */
export async function metricsRoutes(app: App, { metricsToken = null }: MetricsOptions): Promise<void> {
  app.get(
    '/metrics',
    {
      schema: {
        summary: 'What the process counts about itself',
        response: { 200: { content: { 'text/plain': { schema: z.string() } } } },
      },
      config: { access: 'public', problems: ['not-found'] },
      logLevel: 'silent',
    },
    async (request, reply) => {
      if (!mayRead(request, metricsToken)) throw notFound('such thing');
      const { registry } = app.metrics;
      return reply.type(registry.contentType).send(await registry.metrics());
    },
  );
}

function mayRead(request: FastifyRequest, token: string | null): boolean {
  if (token === null)
    return (
      LOOPBACK.test(request.socket.remoteAddress ?? '') && request.headers['x-forwarded-for'] === undefined
    );
  const sent = Buffer.from(request.headers.authorization ?? '');
  const wanted = Buffer.from(`Bearer ${token}`);
  return sent.length === wanted.length && timingSafeEqual(sent, wanted);
}
