import { z } from 'zod';
import { parseTimestamp } from '../../ingest/timestamp.ts';

/**
 * The pieces that every schema is made of. Times are RFC 3339, answered in UTC; ids are UUIDs, which are the same in
 * capitals: put into the one spelling on the way in.
 */
export const Id = z.uuid().toLowerCase();

/** RFC 3339 with an offset or Z, as strokes have it; put into UTC on the way in and out. */
export const Time = z
  .string()
  .refine((text) => parseTimestamp(text) !== null, {
    message: 'Must be a time such as 2026-05-02T16:20:11Z.',
    abort: true,
  })
  .overwrite(inUtc)
  .meta({ format: 'date-time' });

function inUtc(text: string): string {
  return new Date(parseTimestamp(text) ?? Number.NaN).toISOString();
}

export const Name = z.string().trim().min(1).max(300);
export const Notes = z.string().max(10_000);

export const ByIdParams = z.object({ id: Id });
export const OfCoachParams = z.object({ coachId: Id });

/** A whole number in a query: decimal digits alone, which is how every program writes one. */
export function wholeNumber(least: number, most: number) {
  return z.preprocess(
    (sent) => (typeof sent === 'string' && /^(0|[1-9]\d*)$/.test(sent) ? Number(sent) : sent),
    z
      .number({ error: `Must be a whole number from ${least} to ${most}, in digits.` })
      .int()
      .min(least)
      .max(most),
  );
}

/** What every list takes. */
export const PageQuery = z.object({
  limit: wholeNumber(1, 500).default(100),
  cursor: z.string().min(1).max(500).optional(),
});

export const SpanQuery = z.object({ from: Time.optional(), to: Time.optional() });

/** The answer to a request that has nothing to tell but that it was done. */
export const NO_CONTENT = z.undefined().describe('Done; nothing to say.');

export function pageOf<Item extends z.ZodType>(item: Item) {
  return z.object({ items: z.array(item), next: z.string().nullable() });
}

/** A field at fault; `pointer` is a JSON pointer to it (RFC 6901). */
export const FieldFault = z.object({ pointer: z.string(), detail: z.string() });

/** RFC 9457, with the fields at fault. */
export const Problem = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    errors: z.array(FieldFault).optional(),
  })
  .meta({ id: 'Problem' });
export type Problem = z.infer<typeof Problem>;
