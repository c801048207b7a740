import { endOfDay, momentOf } from '../fieldTime.ts';
import { ACTS_OF, isKind, type RecordKind } from './kinds.ts';

/** What of the record the page's address asks for; what is empty asks for nothing. Days as `2026-05-02`. */
export interface RecordQuestion {
  readonly kind: RecordKind | '';
  readonly person: string;
  readonly from: string;
  readonly to: string;
}

export const EVERYTHING: RecordQuestion = { kind: '', person: '', from: '', to: '' };

export function recordQuestionOf(search: string): RecordQuestion {
  const given = new URLSearchParams(search);
  const kind = given.get('kind');
  return {
    kind: isKind(kind) ? kind : '',
    person: given.get('person') ?? '',
    from: given.get('from') ?? '',
    to: given.get('to') ?? '',
  };
}

export function recordAddress(question: RecordQuestion): string {
  const asked = new URLSearchParams(Object.entries(question).filter(([, text]) => text !== ''));
  return asked.size === 0 ? '/record' : `/record?${asked}`;
}

/** Where the service answers it: whole days in the reader's zone. */
export function recordPath({ kind, person, from, to }: RecordQuestion): string {
  const asked = new URLSearchParams();
  const since = from === '' ? null : momentOf(`${from}T00:00`);
  const until = endOfDay(to);
  if (kind !== '') asked.set('acts', ACTS_OF[kind].join(','));
  if (person !== '') asked.set('personId', person);
  if (since !== null) asked.set('from', since.toISOString());
  if (until !== null) asked.set('to', until.toISOString());
  return asked.size === 0 ? '/record' : `/record?${asked}`;
}
