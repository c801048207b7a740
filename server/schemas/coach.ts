import { z } from 'zod';
import { Id, Name, Notes, Time } from './common.ts';

const fields = {
  name: Name,
  model: z.string().trim().min(1).max(300).nullable(),
  year: z.number().int().min(1900).max(2100).nullable(),
  notes: Notes.nullable(),
};

export const CoachBody = z.strictObject({
  name: fields.name,
  model: fields.model.optional(),
  year: fields.year.optional(),
  notes: fields.notes.optional(),
});
export type CoachBody = z.infer<typeof CoachBody>;

export const CoachPatch = CoachBody.partial();

/** One motorhome or trailer. */
export const Coach = z.object({ id: Id, ...fields, createdAt: Time, updatedAt: Time }).meta({ id: 'Coach' });
export type Coach = z.infer<typeof Coach>;
