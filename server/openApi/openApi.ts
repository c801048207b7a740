import swagger from '@fastify/swagger';
import type { FastifyContextConfig, RouteOptions } from 'fastify';
import fp from 'fastify-plugin';
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { SESSION_COOKIE } from '../access/signIn/sessionCookie.ts';
import type { App } from '../appTypes.ts';
import { LONGEST_KEY, REPLAYED } from '../requests/createOnce.ts';
import { operationIdOf } from './operationId.ts';

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

const IDEMPOTENCY_KEY_NAME = 'Idempotency-Key';

/** What `createOnce` reads; no schema of a route holds it, as what one names of the headers is all that is left of them. */
const IDEMPOTENCY_KEY = {
  type: 'object',
  properties: {
    [IDEMPOTENCY_KEY_NAME]: {
      type: 'string',
      minLength: 1,
      maxLength: LONGEST_KEY,
      description:
        'The same key from the same caller within 24 hours gets the first answer of this address again and creates ' +
        'nothing, whatever the body; such an answer has the header `Idempotency-Replayed: true`. The key at another ' +
        'address is refused with 422 `/problems/idempotency-key-reused`. A request that failed leaves its key free.',
    },
  },
} as const;

const REPLAYED_HEADER = {
  description: 'There only where the answer is that of an earlier request with the same Idempotency-Key.',
  schema: { type: 'string', const: 'true' },
} as const;

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Of a route that takes WebSockets: the schemas of its messages, and the token that the request may bring. */
    messages?: {
      readonly sent: z.ZodType;
      readonly answered: z.ZodType;
      readonly token: 'personToken' | 'loggerToken';
    };
  }
}

/** OpenAPI knows no messages: where an operation says which schemas those of its WebSocket have. */
const MESSAGES = 'x-messages';

/** Which component a schema is in the document. */
function referenceTo(schema: z.ZodType): { $ref: string } {
  const id = z.globalRegistry.get(schema)?.id;
  if (id === undefined) throw new Error('The schema of a message has no name.');
  return { $ref: `#/components/schemas/${id}` };
}

/** Whether a route makes something: it answers 201, or takes strokes. */
export function creates({ method, schema, config }: RouteOptions): boolean {
  if (method !== 'POST' || config?.access === 'public') return false;
  return config?.access === 'sender' || Object.hasOwn(Object(schema?.response), 201);
}

/** Generates the OpenAPI 3.1 document from the very schemas that validate. */
export const openApi = fp(async (app: App) => {
  app.addHook('onRoute', (route) => {
    const { access = 'person', messages } = route.config ?? {};
    // Whoever opens a WebSocket without a token sends it on it.
    const security = messages === undefined ? SECURITY[access] : [{ [messages.token]: [] }, {}];
    if (route.schema !== undefined)
      route.schema = { operationId: operationIdOf(route), ...route.schema, security: [...security] };
  });
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Slideload',
        version: '1',
        description: 'Takes in the motor current of slide rooms, learns their normal and warns of trouble.',
      },
      // Wherever the description was read from: the service may stand behind any name.
      servers: [{ url: '/' }],
      webhooks: { news: NEWS },
      components: {
        securitySchemes: {
          personToken: { type: 'http', scheme: 'bearer', description: 'Answered by `POST /api/v1/session`.' },
          sessionCookie: { type: 'apiKey', in: 'cookie', name: SESSION_COOKIE },
          loggerToken: { type: 'http', scheme: 'bearer', description: 'Answered once, with the new logger.' },
        },
      },
    },
    transform: (documented) => {
      const { schema, url } = jsonSchemaTransform(documented);
      const { messages } = documented.route.config ?? {};
      if (messages !== undefined) return { url, schema: { ...schema, [MESSAGES]: messagesOf(messages) } };
      return { url, schema: creates(documented.route) ? { ...schema, headers: IDEMPOTENCY_KEY } : schema };
    },
    transformObject: (documented) => withReplays(jsonSchemaTransformObject(documented)),
  });
});

function messagesOf({ sent, answered }: NonNullable<FastifyContextConfig['messages']>) {
  return { sent: referenceTo(sent), answered: referenceTo(answered) };
}

type OpenApi = ReturnType<typeof jsonSchemaTransformObject>;

/** Says of each operation that takes a key how an answer of before is told from a new one. */
function withReplays(described: OpenApi): OpenApi {
  for (const item of Object.values(described.paths ?? {})) {
    const named: readonly object[] = item?.post?.parameters ?? [];
    if (!named.some((one) => 'name' in one && one.name === IDEMPOTENCY_KEY_NAME)) continue;
    for (const [status, answer] of Object.entries<object>(item?.post?.responses ?? {}))
      if (status.startsWith('2')) Object.assign(answer, { headers: { [REPLAYED]: REPLAYED_HEADER } });
  }
  return described;
}
