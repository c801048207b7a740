import type { SpanningPath } from './spanning.ts';

/** One coach of somebody else's account. */
export interface VisitedCoach {
  readonly accountId: string;
  readonly coachId: string;
}

/**
 * The rows that Postgres gives to a connection (row-level security, migration 0003). What is not named is not there:
 * the empty scope sees nothing.
 */
export interface RowScope {
  /** All of these accounts. */
  readonly accounts?: readonly string[];
  /** All of these coaches, and nothing else of their accounts. */
  readonly visits?: readonly VisitedCoach[];
  /** Set: the above are places to send strokes to; nothing of them can be read but what these have sent. */
  readonly senders?: readonly string[];
  /** Who changes something there, for the record of who did what. */
  readonly person?: string;
  /** Everything, for the reason that stands beside this name. */
  readonly spanning?: SpanningPath;
}

const SETTINGS = ['accounts', 'visit_accounts', 'visits', 'senders', 'spanning', 'person'].map(
  (name) => `slideload.${name}`,
);

/** Enters a scope for as long as the connection stays in nobody else's hands: `$1` to `$6` are `settingsOf` it. */
export const ENTER_SCOPE = `select ${SETTINGS.map((name, i) => `set_config('${name}', $${i + 1}, false)`).join(', ')}`;

/** The scope as values for the settings; alike for alike scopes. */
export function settingsOf({
  accounts = [],
  visits = [],
  senders = [],
  spanning,
  person,
}: RowScope): string[] {
  const ids = (list: readonly string[]) => (list.length === 0 ? '' : `{${list.join(',')}}`);
  return [
    ids([...new Set(accounts)].sort()),
    ids(visits.map((visit) => visit.accountId)),
    ids(visits.map((visit) => visit.coachId)),
    ids([...new Set(senders)].sort()),
    spanning ?? '',
    person ?? '',
  ];
}
