import { z } from 'zod';
import { Id, Time } from './common.ts';

/** A hundred years. */
const MOST_MONTHS = 1200;

const traceMonths = z
  .int()
  .min(1)
  .max(MOST_MONTHS)
  .nullable()
  .describe(
    'Samples are kept for so many months after their arrival; null: for ever. Measures are never removed.',
  );

/** What holds for everything of one account. */
export const Account = z.object({ id: Id, name: z.string(), traceMonths }).meta({ id: 'Account' });
export type Account = z.infer<typeof Account>;

export const AccountPatch = z.strictObject({ traceMonths: traceMonths.optional() });
export type AccountPatch = z.infer<typeof AccountPatch>;

/** What one run removed, counted before and after. The strokes and their measures stay. */
export const RetentionRun = z
  .object({
    id: Id,
    ranAt: Time,
    traceMonths: z.int(),
    removedBefore: Time.describe('The samples of strokes that arrived before it were removed.'),
    tracesBefore: z.int().describe('Traces that arrived before that time, counted before the removal.'),
    tracesRemoved: z.int(),
    bytesRemoved: z.int(),
    tracesAfter: z.int().describe('The same, counted after it: those of strokes that are not measured yet.'),
  })
  .meta({ id: 'RetentionRun' });
export type RetentionRun = z.infer<typeof RetentionRun>;
