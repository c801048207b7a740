import { z } from 'zod';
import { Id, Name, Notes, PageQuery, Time } from './common.ts';

const fields = {
  name: Name,
  model: Name.nullable(),
  year: z.int().min(1900).max(2100).nullable(),
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

export const CoachesQuery = PageQuery.extend({
  state: z
    .enum(['present', 'deleted'])
    .default('present')
    .describe('deleted: those that a dealer can still restore.'),
});

/** One motorhome or trailer. */
export const Coach = z
  .object({
    id: Id,
    ...fields,
    createdAt: Time,
    updatedAt: Time,
    deletedAt: Time.optional().describe('Only of one that was deleted and can still be restored.'),
  })
  .meta({ id: 'Coach' });
export type Coach = z.infer<typeof Coach>;
