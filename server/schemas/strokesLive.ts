import { z } from 'zod';
import { DIRECTIONS } from '../../analysis/trace.ts';
import {
  AMBIENT_C,
  MAX_KEY_CHARACTERS,
  MAX_RATE_HZ,
  MAX_SAMPLES,
  MAX_SIDES,
  MIN_RATE_HZ,
  MIN_SUPPLY_RATE_HZ,
} from '../../ingest/limits.ts';
import { Time } from './common.ts';
import { ProblemMessage } from './problemMessage.ts';

const Key = z.string().min(1).max(MAX_KEY_CHARACTERS).describe("The sender's own name for the stroke.");
const Seq = z.int().min(0).describe('Counts from 0 through all pieces of the stroke.');
const RateHz = z.number().min(MIN_RATE_HZ).max(MAX_RATE_HZ);
const Token = z.string().max(200).optional().describe('Of the logger, where the request brought none.');
const Samples = z.array(z.number().nullable()).min(1).max(MAX_SAMPLES);

const begin = z.strictObject({
  type: z.literal('begin'),
  token: Token,
  key: Key,
  roomId: z.string(),
  direction: z.enum(DIRECTIONS).optional(),
  startedAt: Time,
  sides: z
    .array(z.strictObject({ side: z.string(), rateHz: RateHz }))
    .min(1)
    .max(MAX_SIDES),
  supply: z.strictObject({ rateHz: z.number().min(MIN_SUPPLY_RATE_HZ).max(MAX_RATE_HZ) }).optional(),
  ambientC: z.number().min(AMBIENT_C.min).max(AMBIENT_C.max).optional(),
});

const piece = { type: z.literal('samples'), token: Token, key: Key, seq: Seq };
const ofSide = { ...piece, side: z.string().describe('One of those that the stroke began with.') };

/**
 * What a logger says on `/api/v1/strokes/live`, for whoever writes one. It is read with the same code as whole strokes
 * (`ingest/live`); a test holds the two to each other.
 */
export const LinkMessage = z
  .union([
    z
      .object({ type: z.enum(['hello', 'token']), token: z.string().max(200) })
      .describe('Signs in; any other first message may bring the token too.'),
    begin.describe(
      'A stroke begins, or is taken up again after the link dropped: the stroke less its samples.',
    ),
    z.strictObject({ ...ofSide, amps: Samples }).describe('null is a missed sample.'),
    z.strictObject({ ...ofSide, milliamps: z.array(z.int().nullable()).min(1).max(MAX_SAMPLES) }),
    z.strictObject({
      ...ofSide,
      counts: z.array(z.int().nullable()).min(1).max(MAX_SAMPLES),
      ampsPerCount: z.number().describe('Amperes that one count stands for; not 0.'),
    }),
    z
      .strictObject({ ...piece, volts: Samples })
      .describe('Of the supply, where the stroke began with one; null is a missed reading.'),
    z.object({ type: z.literal('end'), token: Token, key: Key }).describe('The stroke is over: store it.'),
  ])
  .meta({ id: 'LinkMessage' });

/** What the service says to a logger on `/api/v1/strokes/live`, as JSON or CBOR. */
export const LinkAnswer = z
  .discriminatedUnion('type', [
    z
      .object({ type: z.literal('ack'), key: z.string(), seq: z.int() })
      .describe('The piece of this number, and all before it, would survive the death of the service.'),
    z
      .object({ type: z.literal('stored'), key: z.string(), strokeId: z.string() })
      .describe('The stroke is stored as a whole: the logger may forget it.'),
    z
      .object({ type: z.literal('resume'), key: z.string(), nextSeq: z.int() })
      .describe('The stroke was begun before: go on with the piece of this number.'),
    ProblemMessage,
  ])
  .meta({ id: 'LinkAnswer' });
export type LinkAnswer = z.infer<typeof LinkAnswer>;
