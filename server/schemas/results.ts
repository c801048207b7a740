import { z } from 'zod';
import { MEASURE_NAMES } from '../../analysis/measures.ts';
import { DIRECTIONS } from '../../analysis/trace.ts';
import { SEVERITIES, SPIKE_PATTERNS, VERDICTS, WARNING_KINDS } from '../../analysis/warning.ts';
import { Id, Notes, PageQuery, SpanQuery, Time, wholeNumber } from './common.ts';
import { Service } from './service.ts';

export const MeasuresAnswer = z.array(z.object({ name: z.string(), unit: z.string(), title: z.string() }));

export const TrendQuery = SpanQuery.extend({
  measure: z.enum(MEASURE_NAMES, { error: `Must be one of: ${MEASURE_NAMES.join(', ')}.` }),
  direction: z.enum(DIRECTIONS).optional().describe('Left out: both.'),
  side: z
    .string()
    .min(1)
    .max(60)
    .optional()
    .describe('Left out: all. A measure of the whole stroke is the same whichever is named.'),
  points: wholeNumber(100, 20_000)
    .optional()
    .describe(
      'About how many at most: the lowest and highest of each stretch are kept, all beyond the limits and the newest.',
    ),
});

export type TrendQuery = z.infer<typeof TrendQuery>;

const Limits = z.object({ lower: z.number(), centre: z.number(), upper: z.number() });

/** When a steady rise will reach the service line. */
const Forecast = z
  .object({
    serviceLine: z.number(),
    strokes: z
      .number()
      .describe('Strokes of this direction alone, from the latest one until the line is reached.'),
    lower: z.number(),
    upper: z.number().nullable().describe('Null: it may be out of sight, or never.'),
    coverage: z.number().describe('The chance that the line is reached between lower and upper.'),
    percentPerStroke: z.number(),
  })
  .meta({ id: 'Forecast' });

export const Trend = z
  .object({
    points: z.array(
      z.object({
        strokeId: Id,
        at: Time,
        value: z.number(),
        expected: z.number().nullable().describe('Null where the stroke is not judged, as while learning.'),
        adjusted: z.number().nullable(),
        beyond: z.boolean(),
        side: z
          .string()
          .nullable()
          .optional()
          .describe('There where points may be of several; null: of the whole stroke.'),
        direction: z.enum(DIRECTIONS).optional().describe('There where points may be of both.'),
      }),
    ),
    limits: Limits.nullable().describe(
      'Null while learning, and of points that may be of several sides or directions.',
    ),
    services: z.array(Service),
    forecast: Forecast.nullable(),
    /** There only where points were left out: how many strokes there are, and how many of them beyond. */
    thinned: z.object({ points: z.int(), beyond: z.int() }).optional(),
  })
  .meta({ id: 'Trend' });
export type Trend = z.infer<typeof Trend>;

export const RoomStatus = z
  .object({
    verdict: z.enum(VERDICTS),
    headline: z.string(),
    strokes: z.int(),
    openWarnings: z.int(),
    lastStrokeAt: Time.nullable(),
    pending: z.int(),
    /**
     * The part of the room's normal that other rooms of its coach model lend, 0 to 1, and how many they are: null for
     * whoever sees the room by a grant, for whom those others do not exist.
     */
    borrowed: z.object({ share: z.number(), rooms: z.int().nullable() }).nullable(),
  })
  .meta({ id: 'RoomStatus' });
export type RoomStatus = z.infer<typeof RoomStatus>;

export const WarningsQuery = PageQuery.extend({
  state: z.enum(['open', 'acknowledged', 'cleared', 'all']).default('all'),
});
export type WarningsQuery = z.infer<typeof WarningsQuery>;

export const Warning = z
  .object({
    id: Id,
    roomId: Id,
    kind: z.enum(WARNING_KINDS),
    severity: z.enum(SEVERITIES),
    side: z.string().nullable(),
    direction: z.enum(DIRECTIONS).nullable(),
    position: z.number().nullable(),
    pattern: z.enum(SPIKE_PATTERNS).nullable(),
    state: z.enum(['open', 'acknowledged', 'cleared']),
    /** The `startedAt` of the stroke that raised it, as its logger sent it. */
    openedAt: Time,
    /** Where that stroke stands in the room's history: the same, but for a logger whose clock is wrong. */
    placedAt: Time,
    clearedAt: Time.nullable(),
    firstStrokeId: Id,
    latestStrokeId: Id,
    headline: z.string(),
    evidence: z.record(z.string(), z.unknown()),
    checks: z.array(z.string()),
    cautions: z.array(z.string()),
    /** The checks in their order, each with the cautions that belong to it. */
    steps: z.array(z.object({ check: z.string(), cautions: z.array(z.string()) })),
    acknowledgement: z
      .object({ at: Time, by: z.string().nullable(), note: z.string().nullable() })
      .nullable(),
  })
  .meta({ id: 'Warning' });
export type Warning = z.infer<typeof Warning>;

export const AcknowledgementBody = z.strictObject({ note: Notes.nullable().optional() });

const Some = z.array(Id).max(500);
/** Every open warning among those named, and of the coaches named. */
export const AcknowledgementsBody = z.strictObject({
  warnings: Some.optional(),
  coaches: Some.optional(),
  note: AcknowledgementBody.shape.note,
});
export type AcknowledgementsBody = z.infer<typeof AcknowledgementsBody>;
export const Acknowledgements = z.object({ acknowledged: z.array(Id) }).meta({ id: 'Acknowledgements' });

export const ComparisonQuery = z
  .object({
    service: Id.optional(),
    beforeFrom: Time.optional(),
    beforeTo: Time.optional(),
    afterFrom: Time.optional(),
    afterTo: Time.optional(),
  })
  .refine((q) => q.service !== undefined || (q.beforeFrom && q.beforeTo && q.afterFrom && q.afterTo), {
    message: 'Give service, or all of beforeFrom, beforeTo, afterFrom and afterTo.',
  })
  .refine((q) => q.service === undefined || !(q.beforeFrom ?? q.beforeTo ?? q.afterFrom ?? q.afterTo), {
    path: ['service'],
    message: 'Give either service or spans of time, not both.',
  })
  .refine((q) => isInOrder(q.beforeFrom, q.beforeTo), {
    path: ['beforeTo'],
    message: 'Must not be before beforeFrom.',
  })
  .refine((q) => isInOrder(q.afterFrom, q.afterTo), {
    path: ['afterTo'],
    message: 'Must not be before afterFrom.',
  });

export type ComparisonQuery = z.infer<typeof ComparisonQuery>;

function isInOrder(from: string | undefined, to: string | undefined): boolean {
  return from === undefined || to === undefined || Date.parse(from) <= Date.parse(to);
}

const Shift = z.object({
  measure: z.string(),
  unit: z.string(),
  before: z.number().nullable(),
  after: z.number().nullable(),
  shift: z.number().nullable(),
  lower: z.number().nullable(),
  upper: z.number().nullable(),
  excludesZero: z.boolean().describe('The interval, by itself, does not contain zero.'),
});

/** The lowest and the highest of the strokes at each place, amperes. */
const ProfileBand = z.object({
  lower: z.array(z.number().nullable()),
  upper: z.array(z.number().nullable()),
});

/** The strokes of one side of a comparison: the first, the last, and how many. */
const ComparedSpan = z.object({
  from: Time.nullable(),
  to: Time.nullable(),
  strokes: z.int(),
});

/** Before against after a repair. Shifts are after less before, with a 95 % interval. */
export const Comparison = z
  .object({
    account: z
      .string()
      .nullable()
      .describe('The name of the account whose coach it is, for the head of a sheet; null for its guests.'),
    sentence: z.string(),
    /** `since`: the warning that the strokes before begin with; null: they go back as far as strokes or other work do. */
    before: ComparedSpan.extend({ since: z.enum(WARNING_KINDS).nullable() }),
    /** `arose`: the gravest warning that one of these strokes raised; null: none. */
    after: ComparedSpan.extend({ arose: z.enum(WARNING_KINDS).nullable() }),
    groups: z.array(
      z.object({
        side: z.string(),
        direction: z.enum(DIRECTIONS),
        strokesBefore: z.int(),
        strokesAfter: z.int(),
        shifts: z.array(Shift),
        levelIsSure: z
          .boolean()
          .describe(
            'Whether the running current surely changed, with one error rate for all sides and directions: the sentence says so.',
          ),
        changedBins: z
          .array(z.object({ from: z.number(), to: z.number(), shiftAmps: z.number() }))
          .describe('Ranges of travel whose current changed, with one error rate for all profiles.'),
        profileBefore: z.array(z.number().nullable()),
        profileAfter: z.array(z.number().nullable()),
        bandBefore: ProfileBand,
        bandAfter: ProfileBand,
      }),
    ),
    method: z.string(),
  })
  .meta({ id: 'Comparison' });
export type Comparison = z.infer<typeof Comparison>;
