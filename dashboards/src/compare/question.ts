import { endOfDay, momentOf } from '../fieldTime.ts';

/** The four days that bound two spans, as the address and the date fields hold them: `2026-05-02`. */
export const SPAN_NAMES = ['beforeFrom', 'beforeTo', 'afterFrom', 'afterTo'] as const;
export type SpanName = (typeof SPAN_NAMES)[number];
export type Spans = Readonly<Record<SpanName, string>>;

/** What the page's address asks for: the work done, or two spans of days. */
export type Question =
  | { readonly kind: 'service'; readonly serviceId: string }
  | { readonly kind: 'spans'; readonly spans: Spans };

const ID = /^[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}$/i;
const DAY = /^\d{4}-\d{2}-\d{2}$/;
const isDay = (text: string): boolean => DAY.test(text) && !Number.isNaN(Date.parse(`${text}T12:00Z`));

/** Reads the address; null where it asks for nothing that can be answered. */
export function questionOf(search: string): Question | null {
  const given = new URLSearchParams(search);
  const serviceId = given.get('service');
  if (serviceId !== null && ID.test(serviceId)) return { kind: 'service', serviceId };
  const day = (name: SpanName) => given.get(name) ?? '';
  const spans: Spans = {
    beforeFrom: day('beforeFrom'),
    beforeTo: day('beforeTo'),
    afterFrom: day('afterFrom'),
    afterTo: day('afterTo'),
  };
  return SPAN_NAMES.every((name) => isDay(spans[name])) ? { kind: 'spans', spans } : null;
}

export const serviceAddress = (roomId: string, serviceId: string): string =>
  `/rooms/${roomId}/compare?service=${encodeURIComponent(serviceId)}`;

export const spansAddress = (roomId: string, spans: Spans): string =>
  `/rooms/${roomId}/compare?${new URLSearchParams({ ...spans })}`;

/** Where the service answers the question. Days begin and end in the reader's own zone. */
export function comparisonPath(roomId: string, question: Question): string {
  const asked = new URLSearchParams();
  if (question.kind === 'service') asked.set('service', question.serviceId);
  else
    for (const name of SPAN_NAMES) {
      const day = question.spans[name];
      const bound = name.endsWith('From') ? momentOf(`${day}T00:00`) : endOfDay(day);
      if (bound !== null) asked.set(name, bound.toISOString());
    }
  return `/rooms/${roomId}/comparison?${asked}`;
}
