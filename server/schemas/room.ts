import { z } from 'zod';
import { DIRECTIONS, DRIVES } from '../../analysis/trace.ts';
import { Id, Name, Time } from './common.ts';

/** Results are objects by side name: names that every JavaScript object has already would hide in them. */
const SideName = z
  .string()
  .trim()
  .min(1)
  .max(60)
  .refine((name) => !(name in {}), { message: 'This name cannot be used for a side.' });

const fields = {
  name: Name,
  drive: z.enum(DRIVES),
  sides: z
    .array(SideName)
    .min(1)
    .max(8)
    .refine((sides) => new Set(sides).size === sides.length, { message: 'Two sides have the same name.' }),
  travelMetres: z.number().positive().max(10).nullable(),
  gearTeeth: z.int().min(4).max(200).nullable(),
  rackPitchMm: z.number().positive().max(100).nullable(),
  ratedAmps: z.number().positive().max(1000).nullable(),
  nominalVolts: z.number().min(5).max(60),
  positiveDirection: z.enum(DIRECTIONS),
};

const NOMINAL_VOLTS = 12;
/** Null is as good as left out, as in every field that need not be said. */
const NominalVolts = fields.nominalVolts.nullable().transform((volts) => volts ?? NOMINAL_VOLTS);

export const RoomBody = z.strictObject({
  name: fields.name,
  drive: fields.drive,
  sides: fields.sides,
  travelMetres: fields.travelMetres.optional(),
  gearTeeth: fields.gearTeeth.optional(),
  rackPitchMm: fields.rackPitchMm.optional(),
  ratedAmps: fields.ratedAmps.optional(),
  nominalVolts: NominalVolts.default(NOMINAL_VOLTS),
  positiveDirection: fields.positiveDirection.default('extend'),
});
export type RoomBody = z.infer<typeof RoomBody>;

/** A patch names only what changes: no default may creep in, but for what is put back to it by null. */
export const RoomPatch = z.strictObject({ ...fields, nominalVolts: NominalVolts }).partial();

/** One slide room. */
export const Room = z
  .object({ id: Id, coachId: Id, ...fields, createdAt: Time, updatedAt: Time })
  .meta({ id: 'Room' });
export type Room = z.infer<typeof Room>;
