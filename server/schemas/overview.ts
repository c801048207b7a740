import { z } from 'zod';
import { VERDICTS } from '../../analysis/warning.ts';
import { Id, Name, PageQuery, Time } from './common.ts';
import { RoomStatus } from './results.ts';
import { ROLES } from './session.ts';

const OVERVIEW_SORTS = ['concern', 'name', 'heard', 'newest'] as const;

/** Which coaches are asked for: all of these that are given must hold. */
const filters = {
  /** Part of the coach's name, its model or a room's name. */
  q: Name.optional(),
  model: Name.optional(),
  /** A room of this name. */
  room: Name.optional(),
  /** A room with this verdict; with `room`, that room. */
  verdict: z.enum(VERDICTS).optional(),
  /** A logger that was not heard for long. */
  silent: z.enum(['true', 'false']).optional(),
  /** Only coaches with a room whose verdict is another than at `since`. */
  changed: z.enum(['true', 'false']).optional(),
  since: Time.optional(),
  /** Ids separated by commas; more than these make the address longer than servers take. */
  coaches: z
    .string()
    .max(12_000)
    .transform((text) => text.split(','))
    .pipe(z.array(Id).max(300))
    .optional(),
};

export const OverviewQuery = PageQuery.extend({
  ...filters,
  sort: z.enum(OVERVIEW_SORTS).default('concern'),
  cursor: z.string().min(1).max(3000).optional(),
}).refine((query) => query.changed !== 'true' || query.since !== undefined, {
  path: ['since'],
  message: 'Say since when.',
});
export type OverviewQuery = z.infer<typeof OverviewQuery>;

/** A logger that its coach waits to hear of. */
const HeardLogger = z.object({
  id: Id,
  name: z.string(),
  lastHeardAt: Time.nullable(),
  /** Not heard for 14 days. */
  silent: z.boolean(),
});

/** What the list of coaches shows: each coach with its rooms' verdicts and its loggers. */
export const CoachOverview = z
  .object({
    id: Id,
    name: z.string(),
    model: z.string().nullable(),
    year: z.number().nullable(),
    createdAt: Time,
    /** In which role the caller sees it. */
    role: z.enum(ROLES),
    lastHeardAt: Time.nullable(),
    loggers: z.array(HeardLogger),
    rooms: z.array(
      RoomStatus.extend({
        id: Id,
        name: z.string(),
        /** The driven sides, in order. */
        sides: z.array(z.string()),
        /** What it was at `since`; null where it was the same, or where nobody asked. */
        verdictBefore: z.enum(VERDICTS).nullable(),
      }),
    ),
  })
  .meta({ id: 'CoachOverview' });
export type CoachOverview = z.infer<typeof CoachOverview>;

export const OverviewSummaryQuery = z.object({ since: Time.optional() });

/** All that the caller sees, in numbers. */
export const OverviewSummary = z
  .object({
    coaches: z.int(),
    rooms: z.record(z.enum(VERDICTS), z.int()),
    silentLoggers: z.int(),
    models: z.array(z.string()),
    roomNames: z.array(z.string()),
    /** Rooms whose verdict is another than at `since`, and coaches that are new; null where nobody asked. */
    changes: z
      .object({
        worse: z.int(),
        better: z.int(),
        cleared: z.int(),
        arrived: z.int(),
      })
      .nullable(),
  })
  .meta({ id: 'OverviewSummary' });
export type OverviewSummary = z.infer<typeof OverviewSummary>;
