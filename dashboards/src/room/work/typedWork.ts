import type { ServiceBody, ServiceKind, ServiceSeen } from '../../api/types.ts';
import { fieldTime, momentOf } from '../../fieldTime.ts';
import { words } from '../../words.ts';

/** What a person says of work beside its kind, as the fields hold it. */
export interface TypedWork {
  /** Local time without a zone. Empty: now, whenever that is sent. */
  readonly at: string;
  /** Empty: the whole room. */
  readonly side: string;
  readonly notes: string;
}

export const BLANK_WORK: TypedWork = { at: '', side: '', notes: '' };

export const typedWorkOf = ({ at, side, notes }: ServiceSeen): TypedWork => ({
  at: fieldTime(new Date(at)),
  side: side ?? '',
  notes: notes ?? '',
});

/** The service takes none before. */
const EARLIEST_MS = Date.UTC(2000, 0);
/** A field of minutes may be filled in just before the next one. */
const MINUTE_MS = 60_000;

/** Why work cannot have been done then; null where it can. */
export function wrongMoment(field: string, nowMs = Date.now()): string | null {
  const say = words.services;
  const at = momentOf(field);
  if (at === null) return say.atMissing;
  if (at.getTime() > nowMs + MINUTE_MS) return say.atFuture;
  return at.getTime() < EARLIEST_MS ? say.atLongAgo : null;
}

export function bodyOfWork(kind: ServiceKind, typed: TypedWork): ServiceBody {
  const at = typed.at === '' ? new Date() : momentOf(typed.at);
  if (at === null) throw new RangeError('Work needs a moment.');
  const body: ServiceBody = { kind, at: at.toISOString() };
  if (typed.side !== '') body.side = typed.side;
  if (typed.notes.trim() !== '') body.notes = typed.notes.trim();
  return body;
}

/** The same of work that was recorded before: its moment, which a field holds to the minute, stays as it is. */
export function changeOfWork(before: ServiceSeen, kind: ServiceKind, typed: TypedWork) {
  const { at, side = null, notes = null } = bodyOfWork(kind, typed);
  return { kind, side, notes, ...(typed.at === typedWorkOf(before).at ? {} : { at }) };
}
