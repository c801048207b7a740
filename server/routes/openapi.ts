import { z } from 'zod';
import type { App } from '../appTypes.ts';
import { notFound, PROBLEMS } from '../problems.ts';
import { sendText } from '../requests/sendText.ts';

const Description = z.looseObject({ openapi: z.string() });

/** The API's own description, and what each problem's `type` leads to. */
export async function openApiRoutes(app: App): Promise<void> {
  app.get(
    '/api/openapi.json',
    {
      schema: { operationId: 'getDescription', summary: 'This description', response: { 200: Description } },
      config: { access: 'public' },
    },
    async (_, reply) =>
      sendText(reply.header('cache-control', 'no-cache'), 'application/json', JSON.stringify(app.swagger())),
  );

  app.get<{ Params: { name: string } }>(
    '/problems/:name',
    { schema: { hide: true }, config: { access: 'public' } },
    async (request, reply) => {
      const entry = Object.entries(PROBLEMS).find(([name]) => name === request.params.name);
      if (entry === undefined) throw notFound('such problem');
      const [, { status, title }] = entry;
      return reply.type('text/plain; charset=utf-8').send(`${status}: ${title}.\n`);
    },
  );
}
