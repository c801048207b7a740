import swagger from '@fastify/swagger';
import fp from 'fastify-plugin';
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod';
import { SESSION_COOKIE } from './access/sessionCookie.ts';
import type { App } from './appTypes.ts';

const SECURITY = {
  public: [],
  person: [{ personToken: [] }, { sessionCookie: [] }],
  sender: [{ loggerToken: [] }, { personToken: [] }, { sessionCookie: [] }],
} as const;

/** What an account's webhooks are sent. */
const NEWS = {
  post: {
    summary: 'News of a warning or a logger, signed after the Standard Webhooks specification 1.0.0',
    requestBody: {
      content: { 'application/json': { schema: { $ref: '#/components/schemas/WebhookNews' } } },
    },
    responses: {
      '2XX': { description: 'Taken. Anything else is tried again; 410 switches the webhook off.' },
    },
  },
} as const;

/** Generates the OpenAPI 3.1 document from the very schemas that validate. */
export const openApi = fp(async (app: App) => {
  app.addHook('onRoute', (route) => {
    const security = SECURITY[route.config?.access ?? 'person'];
    if (route.schema !== undefined) route.schema = { ...route.schema, security: [...security] };
  });
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Slideload',
        version: '1',
        description: 'Takes in the motor current of slide rooms, learns their normal and warns of trouble.',
      },
      webhooks: { news: NEWS },
      components: {
        securitySchemes: {
          personToken: { type: 'http', scheme: 'bearer', description: 'Answered by `POST /api/v1/session`.' },
          sessionCookie: { type: 'apiKey', in: 'cookie', name: SESSION_COOKIE },
          loggerToken: { type: 'http', scheme: 'bearer', description: 'Answered once, with the new logger.' },
        },
      },
    },
    transform: jsonSchemaTransform,
    transformObject: jsonSchemaTransformObject,
  });
});
