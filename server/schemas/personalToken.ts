import { z } from 'zod';
import { Id, Name, Time } from './common.ts';

const LONGEST_DAYS = 366;
const DAY_MS = 86_400_000;

/** Every token ends: one that is forgotten must not open doors for ever. */
const Until = Time.refine((text) => isSoon(Date.parse(text)), {
  error: `Must be a time to come, at most ${LONGEST_DAYS} days away.`,
});

function isSoon(ms: number): boolean {
  const now = Date.now();
  return ms > now && ms <= now + LONGEST_DAYS * DAY_MS;
}

export const PersonalTokenBody = z.strictObject({
  name: Name,
  until: Until,
  mayChange: z.boolean().default(false).describe('False: it may only read.'),
});
export type PersonalTokenBody = z.infer<typeof PersonalTokenBody>;

/** What a person gives to a script of its own, to speak for it. */
export const PersonalToken = z
  .object({
    id: Id,
    name: Name,
    mayChange: z.boolean(),
    until: Time,
    createdAt: Time,
    lastSeenAt: Time.nullable(),
  })
  .meta({ id: 'PersonalToken' });
export type PersonalToken = z.infer<typeof PersonalToken>;

export const NewPersonalToken = PersonalToken.extend({ token: z.string() }).meta({ id: 'NewPersonalToken' });
export type NewPersonalToken = z.infer<typeof NewPersonalToken>;
