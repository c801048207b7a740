import { z } from 'zod';
import { Id, Name, Time } from './common.ts';

/** Before 1970 to beyond 2100, either way. */
const MOST_OFFSET_S = 5e9;

const fields = { name: Name, sensor: z.enum(['clamp', 'shunt']) };

export const LoggerBody = z.strictObject(fields);
export type LoggerBody = z.infer<typeof LoggerBody>;
export const LoggerPatch = LoggerBody.partial().extend({
  clockOffsetS: z
    .number()
    .min(-MOST_OFFSET_S)
    .max(MOST_OFFSET_S)
    .optional()
    .describe("Seconds to add to what the logger's clock says; all its strokes are placed anew."),
});
export type LoggerPatch = z.infer<typeof LoggerPatch>;

/** What records and sends: its token is answered once, when it is created. */
export const Logger = z
  .object({
    id: Id,
    coachId: Id,
    ...fields,
    clockOffsetS: z.number(),
    lastSeenAt: Time.nullable(),
    createdAt: Time,
    updatedAt: Time,
  })
  .meta({ id: 'Logger' });
export type Logger = z.infer<typeof Logger>;

export const LoggerWithToken = Logger.extend({ token: z.string() }).meta({ id: 'LoggerWithToken' });
