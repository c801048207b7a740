import { DEALER, personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { createOnce } from '../requests/createOnce.ts';
import { ByIdParams, NO_CONTENT, PageQuery, pageOf } from '../schemas/common.ts';
import { NewWebhook, Webhook, WebhookBody, WebhookDelivery, WebhookPatch } from '../schemas/webhook.ts';
import {
  changeWebhook,
  createWebhook,
  findWebhook,
  listDeliveries,
  listWebhooks,
  removeWebhook,
  testWebhook,
} from '../webhooks/webhooks.ts';

const tags = ['webhooks'];
const config = { see: DEALER, problems: ['not-found'] } as const;
const TESTS = { max: 20, timeWindow: '1 minute' } as const;

/** Where the account's programs are told of news, for its dealers. */
export async function webhookRoutes(app: App, { toPrivate }: { toPrivate: boolean }): Promise<void> {
  app.post(
    '/api/v1/webhooks',
    {
      schema: {
        tags,
        summary: 'Tell a program of news; the secret that checks their signatures is answered this once',
        description: 'It gets a `WebhookNews`, signed after the Standard Webhooks specification 1.0.0.',
        body: WebhookBody,
        response: { 201: NewWebhook },
      },
      config,
    },
    async (request, reply) => {
      const { accountId } = personOf(request);
      const made = await createOnce(reply, (trx) => createWebhook(trx, accountId, request.body, toPrivate));
      return reply.header('location', `/api/v1/webhooks/${made.id}`).send(made);
    },
  );

  app.get(
    '/api/v1/webhooks',
    {
      schema: {
        tags,
        summary: 'List the webhooks of the account',
        querystring: PageQuery,
        response: { 200: pageOf(Webhook) },
      },
      config,
    },
    (request) => listWebhooks(request.db, personOf(request).accountId, request.query),
  );

  app.get(
    '/api/v1/webhooks/:id',
    { schema: { tags, summary: 'Read a webhook', params: ByIdParams, response: { 200: Webhook } }, config },
    (request) => findWebhook(request.db, personOf(request).accountId, request.params.id),
  );

  app.patch(
    '/api/v1/webhooks/:id',
    {
      schema: {
        tags,
        summary: 'Change a webhook, or switch it off and on',
        params: ByIdParams,
        body: WebhookPatch,
        response: { 200: Webhook },
      },
      config,
    },
    (request) => {
      const { accountId } = personOf(request);
      return changeWebhook(request.db, accountId, request.params.id, request.body, toPrivate);
    },
  );

  app.delete(
    '/api/v1/webhooks/:id',
    {
      schema: { tags, summary: 'Remove a webhook', params: ByIdParams, response: { 204: NO_CONTENT } },
      config,
    },
    (request) => removeWebhook(request.db, personOf(request).accountId, request.params.id),
  );

  app.post(
    '/api/v1/webhooks/:id/test',
    {
      schema: {
        tags,
        summary: 'Send a webhook a test; what becomes of it is among its deliveries',
        params: ByIdParams,
        response: { 201: WebhookDelivery },
      },
      config: { ...config, rateLimit: TESTS },
    },
    (request, reply) => {
      const { accountId } = personOf(request);
      return createOnce(reply, (trx) => testWebhook(trx, accountId, request.params.id));
    },
  );

  app.get(
    '/api/v1/webhooks/:id/deliveries',
    {
      schema: {
        tags,
        summary: 'What was sent to a webhook and what is on its way, the latest first',
        params: ByIdParams,
        querystring: PageQuery,
        response: { 200: pageOf(WebhookDelivery) },
      },
      config,
    },
    (request) => listDeliveries(request.db, personOf(request).accountId, request.params.id, request.query),
  );
}
