import { z } from 'zod';
import { Id, Name, Time } from './common.ts';
import { Email, Password, Person, ROLES } from './session.ts';

export const PersonBody = z.strictObject({ email: Email, name: Name, role: z.enum(ROLES) });
export type PersonBody = z.infer<typeof PersonBody>;
export const PersonPatch = PersonBody.omit({ email: true }).partial();
export type PersonPatch = z.infer<typeof PersonPatch>;

/** A person of the account; `joined` once the invitation was accepted. */
export const Colleague = Person.extend({ joined: z.boolean(), createdAt: Time }).meta({ id: 'Colleague' });
export type Colleague = z.infer<typeof Colleague>;

/** The secret of a link that sets a password, once and within 7 days. */
const Invitation = z.string();
export const Invited = z.object({ person: Colleague, invitation: Invitation }).meta({ id: 'Invited' });
export type Invited = z.infer<typeof Invited>;

export const InvitationParams = z.object({ invitation: z.string().min(1).max(200) });
export const AcceptanceBody = z.strictObject({ password: Password });

export const ResetRequestBody = z.strictObject({ email: Email });
/** The same for every address. */
export const ResetRequested = z.object({ status: z.literal('accepted'), mails: z.boolean() });
export type ResetRequested = z.infer<typeof ResetRequested>;
export const ResetParams = z.object({ reset: z.string().min(1).max(200) });
export const ResetBody = z.strictObject({ password: Password });

export const GrantBody = z.strictObject({
  email: Email,
  role: z.enum(['owner', 'technician']),
  until: Time.nullable().optional(),
});
export type GrantBody = z.infer<typeof GrantBody>;

/** Lets a person of another account see one coach; `name` is null until that person has joined. */
export const Grant = z
  .object({
    id: Id,
    coachId: Id,
    email: z.string(),
    name: z.string().nullable(),
    role: z.enum(['owner', 'technician']),
    until: Time.nullable(),
    createdAt: Time,
  })
  .meta({ id: 'Grant' });
export type Grant = z.infer<typeof Grant>;

/** With an invitation where nobody has the address yet. */
export const NewGrant = Grant.extend({ invitation: Invitation.optional() }).meta({ id: 'NewGrant' });
export type NewGrant = z.infer<typeof NewGrant>;

/** One place where a person is signed in. */
export const SessionPlace = z
  .object({ id: Id, current: z.boolean(), createdAt: Time, lastSeenAt: Time, expiresAt: Time })
  .meta({ id: 'SessionPlace' });
export type SessionPlace = z.infer<typeof SessionPlace>;

export const PasswordBody = z.strictObject({
  oldPassword: z.string().min(1).max(1000),
  newPassword: Password,
});
