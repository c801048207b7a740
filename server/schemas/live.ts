import { z } from 'zod';
import { DIRECTIONS } from '../../analysis/trace.ts';
import { Id, Time } from './common.ts';
import { ProblemMessage } from './problemMessage.ts';
import { RoomStatus, Warning } from './results.ts';
import { Stroke } from './stroke.ts';

/** What a person's program may say on the live feed. */
export const LiveRequest = z
  .discriminatedUnion(
    'type',
    [
      z.object({ type: z.enum(['hello', 'token']), token: z.string().max(200) }),
      z.object({ type: z.literal('watch'), roomId: Id }),
      z.object({ type: z.literal('unwatch'), roomId: Id }),
    ],
    { error: 'Must be one of: hello, watch, unwatch.' },
  )
  .meta({ id: 'LiveRequest' });
export type LiveRequest = z.infer<typeof LiveRequest>;

const samplesOf = {
  type: z.literal('samples'),
  roomId: Id,
  strokeId: Id.describe('The id that the finished stroke gets.'),
  key: z.string().describe("The logger's own name for the stroke: two loggers may use the same."),
  direction: z.enum(DIRECTIONS).nullable(),
  startedAt: Time,
  seq: z
    .int()
    .describe(
      'Of the last piece in it: counts from 0 through all pieces of the stroke, whatever side they are of.',
    ),
  rateHz: z.number(),
  startsAtS: z.number().describe('Of the first of the samples, seconds from `startedAt`.'),
};

/**
 * Samples of a stroke that is still under way, once they are committed, each once. Whoever begins to watch is first
 * told of all there are.
 */
export const LiveSamples = z.union([
  z.object({
    ...samplesOf,
    side: z.string(),
    amps: z.array(z.number().nullable()).readonly().describe('null is a missed sample.'),
  }),
  z.object({
    ...samplesOf,
    side: z.null().describe("The supply's."),
    volts: z.array(z.number().nullable()).readonly().describe('null is a missed reading.'),
  }),
]);
export type LiveSamples = z.infer<typeof LiveSamples>;

/** What the service says on it. A watch is answered with the room's status as it stands. */
export const LivePush = z
  .union([
    LiveSamples,
    z.object({ type: z.literal('status'), roomId: Id, status: RoomStatus }),
    z.object({ type: z.literal('stroke'), roomId: Id, stroke: Stroke }),
    z.object({ type: z.literal('warning'), roomId: Id, warning: Warning }),
    ProblemMessage.extend({ roomId: z.string().optional() }),
  ])
  .meta({ id: 'LivePush' });
export type LivePush = z.infer<typeof LivePush>;
