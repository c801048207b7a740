import { z } from 'zod';
import { SERVICE_KINDS } from '../../analysis/trace.ts';
import { Id, Notes, Time } from './common.ts';

const fields = {
  kind: z.enum(SERVICE_KINDS),
  at: Time,
  side: z.string().trim().min(1).max(60).nullable(),
  notes: Notes.nullable(),
};

const EARLIEST_MS = Date.UTC(2000, 0);
/** A caller's clock may be off by its time zone and more. */
const MOST_AHEAD_MS = 24 * 3_600_000;

/** Work is recorded once it was done: a day of the future would have the room learn its normal anew until then. */
const TimeOfWork = Time.refine(
  (at) => Date.parse(at) >= EARLIEST_MS && Date.parse(at) <= Date.now() + MOST_AHEAD_MS,
  { message: 'Work lies neither before the year 2000 nor more than 24 hours ahead.' },
).meta({
  format: 'date-time',
  description:
    'When it was done: not before the year 2000, and at most 24 hours ahead of the service’s clock.',
});

export const ServiceBody = z.strictObject({
  kind: fields.kind,
  at: TimeOfWork,
  side: fields.side.optional(),
  notes: fields.notes.optional(),
});
export type ServiceBody = z.infer<typeof ServiceBody>;
export const ServicePatch = ServiceBody.partial();

/** Work done on a room. */
export const Service = z
  .object({ id: Id, roomId: Id, ...fields, createdAt: Time, updatedAt: Time })
  .meta({ id: 'Service' });
export type Service = z.infer<typeof Service>;

/** The same as somebody sees it who asks for it. */
export const ServiceSeen = Service.extend({
  mayChange: z
    .boolean()
    .describe(
      'Whether the role of whoever asks lets it change and remove this: an owner only what it recorded.',
    ),
}).meta({ id: 'ServiceSeen' });
export type ServiceSeen = z.infer<typeof ServiceSeen>;
