import { momentOf } from '../fieldTime.ts';

/** The last minute of a day (`2026-05-02`) in the reader's zone, RFC 3339; null where there is none. */
export function endOfDay(day: string): string | null {
  return day === '' ? null : (momentOf(`${day}T23:59`)?.toISOString() ?? null);
}
