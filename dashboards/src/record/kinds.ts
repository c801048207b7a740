import { recordWords } from '../words/record.ts';

export type Act = keyof typeof recordWords.acts;
export type RecordKind = keyof typeof recordWords.recordKinds;

/** What a reader asks for by one word. Every act that has a name is of one kind. */
export const ACTS_OF: Readonly<Record<RecordKind, readonly Act[]>> = {
  signIns: ['signed-in', 'signed-out', 'sign-in-failed', 'password-changed', 'token-made', 'token-ended'],
  people: [
    'person-added',
    'person-joined',
    'person-removed',
    'role-changed',
    'invitation-made',
    'grant-given',
    'grant-accepted',
    'grant-ended',
  ],
  coaches: [
    'coach-deleted',
    'coach-restored',
    'coach-removed',
    'room-removed',
    'logger-added',
    'logger-removed',
    'stroke-removed',
  ],
  work: ['service-recorded', 'service-changed', 'service-removed', 'warning-acknowledged'],
  settings: ['settings-changed', 'account-changed', 'webhook-added', 'webhook-changed', 'webhook-removed'],
};

// The keys of the words are the kinds.
export const RECORD_KINDS = Object.keys(recordWords.recordKinds) as RecordKind[];

export const isKind = (text: string | null): text is RecordKind => RECORD_KINDS.some((kind) => kind === text);

/** What an act is called; one that is newer than these pages, by the name that the service has for it. */
export function actWord(act: string): string {
  const known: Readonly<Record<string, string>> = recordWords.acts;
  return known[act] ?? act.replaceAll('-', ' ');
}
