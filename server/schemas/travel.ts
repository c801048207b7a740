import { z } from 'zod';
import { DIRECTIONS } from '../../analysis/trace.ts';
import { Id, wholeNumber } from './common.ts';

const Places = z.array(z.number().nullable());

const NormalSide = z.object({
  /** How many strokes it was made of. */
  strokes: z.int(),
  lower: Places,
  centre: Places,
  upper: Places,
});
export type NormalSide = z.infer<typeof NormalSide>;

export const NormalQuery = z.object({
  direction: z.enum(DIRECTIONS),
  stroke: Id.optional().describe('A stroke of the room: its time, supply and temperature.'),
});

export type NormalQuery = z.infer<typeof NormalQuery>;

/** What is normal along the travel, amperes in 64 equal steps from fully in to fully out; null: not known yet. */
export const Normal = z
  .object({ direction: z.enum(DIRECTIONS), sides: z.record(z.string(), NormalSide.nullable()) })
  .meta({ id: 'Normal' });
export type Normal = z.infer<typeof Normal>;

const MAX_POINTS = 20_000;

/** How many points a picture can show. Thinning keeps the smallest and the largest of each stretch. */
export const PointsQuery = z.object({
  points: wholeNumber(100, MAX_POINTS).optional(),
});

const AlongTravel = { positions: z.array(z.number()) };

/** A stroke by where the room was, 0 fully in to 1 fully out: amperes less the sensor's offset, and volts. */
export const TravelTrace = z
  .object({
    direction: z.enum(DIRECTIONS),
    sides: z.array(
      z.object({
        side: z.string(),
        ...AlongTravel,
        amps: z.array(z.number()),
        inrushEnd: z.number(),
        endStop: z.number().nullable(),
        pauses: z.array(z.number()),
      }),
    ),
    supply: z.object({ ...AlongTravel, volts: z.array(z.number()) }).nullable(),
    ambientC: z.number().nullable(),
  })
  .meta({ id: 'TravelTrace' });
export type TravelTrace = z.infer<typeof TravelTrace>;
