import { z } from 'zod';
import { DIRECTIONS } from '../../analysis/trace.ts';
import { Id, Notes, PageQuery, Problem, SpanQuery, Time } from './common.ts';

const Position = z.number();
const Spike = z.object({ position: Position, amps: z.number(), widthS: z.number() });

const SideResult = z.object({
  inrushAmps: z.number(),
  runningAmps: z.number(),
  runningAmpsP90: z.number(),
  endStopAmps: z.number().nullable(),
  durationS: z.number(),
  chargeAs: z.number(),
  energyJ: z.number().nullable(),
  roughness: z.number(),
  spikes: z.array(Spike),
  dips: z.array(Spike),
  profile: z.array(z.number().nullable()),
  offsetAmps: z.number().nullable(),
  noiseAmps: z.number(),
  phases: z.object({
    startS: z.number(),
    inrushEndS: z.number(),
    endStopStartS: z.number().nullable(),
    endS: z.number(),
    pauses: z.array(z.object({ fromS: z.number(), toS: z.number() })),
  }),
  rateHz: z.number().optional(),
  sign: z
    .literal([1, -1])
    .optional()
    .describe('Whether the current was recorded as positive or as negative while it drove.'),
  held: z
    .object({ amps: z.number(), noiseSteps: z.number() })
    .optional()
    .describe(
      'The highest reading, amperes as recorded, where several samples are that one value; noise in steps of readings.',
    ),
});

const AnalysisDone = z.object({
  status: z.literal('done'),
  direction: z.enum(DIRECTIONS),
  positionBy: z.enum(['speed', 'time']),
  sides: z.record(z.string(), SideResult),
  share: z.record(z.string(), z.number()).nullable(),
  lagS: z.number().nullable(),
  supplyVolts: z.number().nullable(),
  doubts: z.array(z.object({ side: z.string(), doubt: z.string(), detail: z.string() })),
});

/** What the samples of one stroke say; `unusable` with a reason where they say nothing. */
const Analysis = z
  .discriminatedUnion('status', [
    AnalysisDone,
    z.object({
      status: z.literal('unusable'),
      reason: z.string(),
      sides: z.strictObject({}).describe('Empty: none could be measured.'),
      share: z.null(),
      lagS: z.null(),
      doubts: AnalysisDone.shape.doubts.optional(),
    }),
  ])
  .meta({ id: 'Analysis' });

const SentRate = z
  .number()
  .optional()
  .describe('As sent; absent where times were sent, and of strokes that an older version stored.');
const SentSide = z.object({ side: z.string(), rateHz: SentRate });

/** One stroke, less its samples. */
export const Stroke = z
  .object({
    id: Id,
    roomId: Id,
    loggerId: Id.nullable(),
    key: z.string(),
    direction: z.enum(DIRECTIONS).nullable(),
    startedAt: Time.describe('As sent, or as a person corrected it.'),
    placedAt: Time.describe(
      'Its place in the history: startedAt with the offset of the logger, or its arrival.',
    ),
    placedBy: z
      .enum(['sender', 'arrival', 'person'])
      .describe('Whose time placedAt is: arrival where startedAt is before 2015 or a day or more ahead.'),
    receivedAt: Time,
    sides: z.array(SentSide),
    hasSupply: z.boolean(),
    supply: z.object({ rateHz: SentRate }).nullable().describe('null: none was sent.'),
    ambientC: z.number().nullable(),
    excluded: z.boolean(),
    note: z.string().nullable(),
    analysis: Analysis.nullable(),
  })
  .meta({ id: 'Stroke' });
export type Stroke = z.infer<typeof Stroke>;

export const StrokePatch = z.strictObject({
  direction: z.enum(DIRECTIONS).optional(),
  startedAt: Time.optional(),
  roomId: Id.optional(),
  excluded: z.boolean().optional(),
  note: Notes.nullable().optional(),
});
export type StrokePatch = z.infer<typeof StrokePatch>;

export const StrokesQuery = PageQuery.extend(SpanQuery.shape).extend({
  direction: z.enum(DIRECTIONS).optional(),
  profiles: z
    .enum(['true', 'false'])
    .optional()
    .describe('false: every profile comes empty, for a list that draws none. They are most of the answer.'),
});
export type StrokesQuery = z.infer<typeof StrokesQuery>;

export const StrokeOutcome = z.object({
  key: z.string().nullable(),
  strokeId: Id.nullable(),
  outcome: z.enum(['stored', 'duplicate', 'rejected']),
  problem: Problem.optional(),
});
export type StrokeOutcome = z.infer<typeof StrokeOutcome>;

/** In the order sent. */
export const StrokeOutcomes = z.object({ results: z.array(StrokeOutcome) }).meta({ id: 'StrokeOutcomes' });
export type StrokeOutcomes = z.infer<typeof StrokeOutcomes>;

/** The very numbers that were sent; null is a missed sample. */
export const Trace = z
  .object({
    sides: z.array(
      z.object({
        side: z.string(),
        rateHz: z.number().optional(),
        t: z.array(z.number()).optional(),
        amps: z.array(z.number().nullable()),
      }),
    ),
    supply: z
      .object({
        rateHz: z.number().optional(),
        t: z.array(z.number()).optional(),
        volts: z.array(z.number().nullable()),
      })
      .optional(),
    ambientC: z.number().optional(),
    thinned: z.literal(true).optional().describe('There were more samples than the points asked for.'),
  })
  .meta({ id: 'Trace' });
export type Trace = z.infer<typeof Trace>;
