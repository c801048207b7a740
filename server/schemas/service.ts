import { z } from 'zod';
import { SERVICE_KINDS } from '../../analysis/trace.ts';
import { Id, Notes, Time } from './common.ts';

const fields = {
  kind: z.enum(SERVICE_KINDS),
  at: Time,
  side: z.string().trim().min(1).max(60).nullable(),
  notes: Notes.nullable(),
};

export const ServiceBody = z.strictObject({
  kind: fields.kind,
  at: fields.at,
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
