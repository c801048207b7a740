import { z } from 'zod';
import { Id, Name } from './common.ts';

export const ROLES = ['dealer', 'technician', 'owner'] as const;
export type Role = (typeof ROLES)[number];

/** An e-mail address, kept in lower case. */
export const Email = z.email().max(254).toLowerCase();

/** 12 to 200 characters. */
export const Password = z.string().min(12).max(200);

export const SignInBody = z.strictObject({ email: Email, password: z.string().min(1).max(1000) });

export const Person = z
  .object({ id: Id, accountId: Id, email: z.string(), name: z.string(), role: z.enum(ROLES) })
  .meta({ id: 'Person' });
export type Person = z.infer<typeof Person>;

export const SignedIn = z.object({ person: Person, token: z.string() }).meta({ id: 'SignedIn' });

/** The one-time set-up of an empty installation. */
export const SetUpBody = z.strictObject({
  token: z.string().min(1).max(200),
  email: Email,
  name: Name,
  password: Password,
});
