import { z } from 'zod';
import { DIRECTIONS } from '../../analysis/trace.ts';
import { FieldFault, Time } from './common.ts';

const Line = z.object({ name: z.string(), seconds: z.array(z.number()), values: z.array(z.number()) });

/** What would be made of a CSV recording; nothing has been stored. */
export const StrokesPreview = z
  .object({
    /** For `POST /api/v1/strokes?key=`: the same for the same file read in the same way. */
    key: z.string(),
    /** How many lines above the titles are passed over, such as a meter's name and the day. */
    passedLines: z.int(),
    /** What parts the columns; null: there is one. */
    delimiter: z.string().nullable(),
    /** What each column is taken for; `kind/side/unit` is how `columns=` says it. */
    columns: z.array(
      z.object({
        column: z.int(),
        title: z.string().nullable(),
        kind: z.enum(['time', 'side', 'supply', 'ambient', 'none']),
        side: z.string().nullable(),
        unit: z.string().nullable(),
        examples: z.array(z.string()),
      }),
    ),
    rows: z.int(),
    startedAt: Time.nullable(),
    strokes: z.array(
      z.object({
        fromS: z.number(),
        toS: z.number(),
        samples: z.int(),
        startedAt: Time.nullable(),
        /** Null: the sign of the current does not tell, or is the same in all of several strokes. */
        direction: z.enum(DIRECTIONS).nullable(),
      }),
    ),
    /** The whole recording for a picture, thinned; the smallest and the largest of each stretch are kept. */
    sides: z.array(Line),
    supply: Line.nullable(),
    /** What stands in the way of storing it. */
    problems: z.array(FieldFault),
  })
  .meta({ id: 'StrokesPreview' });
export type StrokesPreview = z.infer<typeof StrokesPreview>;
