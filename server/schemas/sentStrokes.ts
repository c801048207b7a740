import { z } from 'zod';
import { DIRECTIONS } from '../../analysis/trace.ts';
import type { SentQuery } from '../../ingest/forms/sentForm.ts';
import {
  AMBIENT_C,
  MAX_AMPS,
  MAX_KEY_CHARACTERS,
  MAX_RATE_HZ,
  MAX_SAMPLES,
  MAX_SIDES,
  MAX_STROKES_PER_REQUEST,
  MAX_TIME_S,
  MAX_VOLTS,
  MIN_RATE_HZ,
  MIN_SAMPLES,
  MIN_SUPPLY_RATE_HZ,
} from '../../ingest/limits.ts';

const Amps = z.number().min(-MAX_AMPS).max(MAX_AMPS).nullable();
const Milliamps = z
  .int()
  .min(-1000 * MAX_AMPS)
  .max(1000 * MAX_AMPS)
  .nullable();
const Counts = z.int().nullable();
const Time = z.number().min(-MAX_TIME_S).max(MAX_TIME_S);
const samples = <Item extends z.ZodType>(item: Item) => z.array(item).min(MIN_SAMPLES).max(MAX_SAMPLES);

/** Either of the two ways to say when a side was sampled. */
const CLOCKS = [
  { rateHz: z.number().min(MIN_RATE_HZ).max(MAX_RATE_HZ) },
  { t: samples(Time).describe('Seconds from startedAt, strictly rising, one for each sample.') },
];
/** One of the three forms of a current. */
const CURRENTS = [
  { amps: samples(Amps).describe('null is a missed sample.') },
  { milliamps: samples(Milliamps) },
  {
    counts: samples(Counts).describe("A converter's own numbers."),
    ampsPerCount: z.number().min(-MAX_AMPS).max(MAX_AMPS).describe('Amperes of one count; not 0.'),
  },
];
const Side = z.union(
  CLOCKS.flatMap((clock) =>
    CURRENTS.map((current) => z.strictObject({ side: z.string(), ...clock, ...current })),
  ),
);

const volts = z
  .array(z.number().min(-MAX_VOLTS).max(MAX_VOLTS).nullable())
  .min(1)
  .max(MAX_SAMPLES)
  .describe('null is a missed reading.');
const Supply = z.union([
  z.strictObject({ rateHz: z.number().min(MIN_SUPPLY_RATE_HZ).max(MAX_RATE_HZ), volts }),
  z.strictObject({ t: z.array(Time).min(1).max(MAX_SAMPLES), volts }),
]);

/** The form of a stroke as the OpenAPI document tells it, with the limits that the decoder holds senders to. */
const SentStroke = z.strictObject({
  key: z.string().min(1).max(MAX_KEY_CHARACTERS).describe("The sender's own, unique for each sender."),
  roomId: z.string(),
  direction: z.enum(DIRECTIONS).nullish().describe("May be left out where the current's sign tells it."),
  startedAt: z.iso.datetime({ offset: true }),
  sides: z.array(Side).min(1).max(MAX_SIDES),
  supply: Supply.nullish(),
  ambientC: z.number().min(AMBIENT_C.min).max(AMBIENT_C.max).nullish(),
});

const described = z.toJSONSchema(
  z.union([SentStroke, z.array(SentStroke).min(1).max(MAX_STROKES_PER_REQUEST)]),
);

/**
 * The body of `POST /api/v1/strokes`. It passes unchecked here: `ingest/json` checks it on the way into its typed
 * arrays, as a schema on every number costs more than reading them does. The description goes into the OpenAPI
 * document.
 */
export const SentStrokes = z.unknown().meta({ anyOf: described.anyOf });

/** What JSON and CBOR say within the stroke, and CSV and SenML here. `ingest` checks the values. */
export const SentStrokesQuery = z.object({
  roomId: z.string().optional().describe('CSV and SenML: the room.'),
  key: z
    .string()
    .optional()
    .describe(
      "CSV and SenML: the sender's own key; of several strokes the first has it, the others key#2, key#3, ...",
    ),
  startedAt: z.string().optional().describe('CSV and SenML: the time of the first sample (RFC 3339).'),
  direction: z
    .string()
    .optional()
    .describe('CSV and SenML: extend or retract; for several strokes also one for each, with commas.'),
  rateHz: z.string().optional().describe('CSV without a column of times, or whose times are not to be used.'),
  side: z
    .string()
    .optional()
    .describe(
      'CSV: the side of a column that says only its unit; unless said that of the room, main where it has several.',
    ),
  columns: z
    .string()
    .optional()
    .describe(
      'CSV: what each column is, in order, whatever its title says, with commas: time/s, time/ms, side/NAME/A, ' +
        'side/NAME/mA, supply/V, ambient/C, ambient/F, none.',
    ),
}) satisfies z.ZodType<SentQuery>;
