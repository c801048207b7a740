import { z } from 'zod';
import { DIRECTIONS } from '../../analysis/trace.ts';
import { SEVERITIES, WARNING_KINDS } from '../../analysis/warning.ts';
import { Id, Time } from './common.ts';

const WARNING_EVENTS = ['warning.opened', 'warning.worse', 'warning.cleared'] as const;
export type WarningEvent = (typeof WARNING_EVENTS)[number];
/** What programs can be told of. */
const EVENTS = [...WARNING_EVENTS, 'logger.silent'] as const;
export type Event = (typeof EVENTS)[number];

const LONGEST_URL = 2000;

/** Where the news go. Which addresses are taken besides is decided by `webhooks/refuseUrl.ts`. */
const Url = z
  .string()
  .min(1)
  .max(LONGEST_URL)
  .refine((text) => URL.canParse(text) && /^https?:$/.test(new URL(text).protocol), {
    message: 'Must be an address such as https://rooms.example.com/news.',
  });

const Events = z
  .array(z.enum(EVENTS))
  .min(1)
  .max(EVENTS.length)
  .refine((events) => new Set(events).size === events.length, { message: 'Name each event once.' });

export const WebhookBody = z.strictObject({
  url: Url,
  events: Events.default([...EVENTS]),
  severity: z.enum(SEVERITIES).default('watch').describe('The least severity of warnings that it is sent.'),
});
export type WebhookBody = z.infer<typeof WebhookBody>;

export const WebhookPatch = z
  .strictObject({ url: Url, events: Events, severity: z.enum(SEVERITIES), enabled: z.boolean() })
  .partial();
export type WebhookPatch = z.infer<typeof WebhookPatch>;

/** Where an account's programs are told of news. */
export const Webhook = z
  .object({
    id: Id,
    url: z.string(),
    events: z.array(z.enum(EVENTS)),
    severity: z.enum(SEVERITIES),
    enabled: z.boolean(),
    /** Why it was switched off by itself; null: it was not. */
    disabledBecause: z.string().nullable(),
    /** How often it did not answer well in a row, and when it is tried again; null: it answers well. */
    failing: z.object({ times: z.int(), tryAt: Time }).nullable(),
    createdAt: Time,
    updatedAt: Time,
  })
  .meta({ id: 'Webhook' });
export type Webhook = z.infer<typeof Webhook>;

/** `whsec_` and the key of its signatures in base64, answered this once. */
export const NewWebhook = Webhook.extend({ secret: z.string() }).meta({ id: 'NewWebhook' });
export type NewWebhook = z.infer<typeof NewWebhook>;

/** One piece of news on its way to a webhook, or what became of it. */
export const WebhookDelivery = z
  .object({
    /** The `webhook-id` that it is sent with, each time it is tried. */
    id: Id,
    event: z.enum([...EVENTS, 'test']),
    state: z.enum(['waiting', 'sent', 'dropped', 'failed']),
    attempts: z.int(),
    /** Of the last answer; null: there was none. */
    status: z.int().nullable(),
    error: z.string().nullable(),
    madeAt: Time,
    endedAt: Time.nullable(),
  })
  .meta({ id: 'WebhookDelivery' });
export type WebhookDelivery = z.infer<typeof WebhookDelivery>;

const Named = z.object({ id: Id, name: z.string() });

/** The body of the request that a webhook gets. */
export const WebhookNews = z
  .object({
    type: z.enum([...EVENTS, 'test']),
    timestamp: Time,
    data: z.union([
      z.object({
        coach: Named,
        room: Named,
        warning: z.object({
          id: Id,
          kind: z.enum(WARNING_KINDS),
          severity: z.enum(SEVERITIES),
          side: z.string().nullable(),
          direction: z.enum(DIRECTIONS).nullable(),
          headline: z.string(),
          openedAt: Time,
          clearedAt: Time.nullable(),
        }),
      }),
      z.object({ coach: Named, logger: Named.extend({ lastHeardAt: Time.nullable() }) }),
      z.object({}),
    ]),
  })
  .meta({ id: 'WebhookNews' });
export type WebhookNews = z.infer<typeof WebhookNews>;
