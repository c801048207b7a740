import { z } from 'zod';
import { Id, PageQuery, SpanQuery, Time } from './common.ts';

export const RecordQuery = PageQuery.extend(SpanQuery.shape).extend({
  acts: z
    .string()
    .max(2000)
    .regex(/^[a-z-]+(,[a-z-]+)*$/, { error: 'Must be names of acts, with commas.' })
    .optional()
    .describe('Only these acts, such as signed-in,signed-out.'),
  personId: Id.optional().describe('Only what this person did.'),
});
export type RecordQuery = z.infer<typeof RecordQuery>;

/** One act of the record of who did what. */
export const RecordedAct = z
  .object({
    id: Id,
    at: Time,
    act: z.string().describe('Such as signed-in, grant-given, coach-deleted, service-recorded.'),
    by: z
      .object({ id: Id, name: z.string().nullable() })
      .nullable()
      .describe('With the name that it had then; null where nobody was signed in.'),
    thing: z.string().describe('What kind of thing it was done to.'),
    thingId: Id.nullable(),
    coachId: Id.nullable(),
    coachName: z.string().nullable().describe('As the coach is called now; null where it is gone.'),
    details: z.record(z.string(), z.unknown()),
  })
  .meta({ id: 'RecordedAct' });
export type RecordedAct = z.infer<typeof RecordedAct>;
