import { z } from 'zod';
import { Id, Name, Time } from './common.ts';

const fields = { name: Name, sensor: z.enum(['clamp', 'shunt']) };

export const LoggerBody = z.strictObject(fields);
export type LoggerBody = z.infer<typeof LoggerBody>;
export const LoggerPatch = LoggerBody.partial();

/** What records and sends: its token is answered once, when it is created. */
export const Logger = z
  .object({
    id: Id,
    coachId: Id,
    ...fields,
    lastSeenAt: Time.nullable(),
    createdAt: Time,
    updatedAt: Time,
  })
  .meta({ id: 'Logger' });
export type Logger = z.infer<typeof Logger>;

export const LoggerWithToken = Logger.extend({ token: z.string() }).meta({ id: 'LoggerWithToken' });
