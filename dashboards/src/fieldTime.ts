import { theReader } from './reader.ts';

/** Moments as `datetime-local` fields hold them (`2026-05-02T16:20`), in the reader's zone. */

/** What the clocks of the zone show at that moment, as if it were UTC. Milliseconds since 1970. */
function wallClockMs(atMs: number): number {
  const parts = new Intl.DateTimeFormat('en', {
    timeZone: theReader().timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  }).formatToParts(atMs);
  const part = (type: Intl.DateTimeFormatPartTypes) =>
    Number(parts.find((each) => each.type === type)?.value ?? 0);
  return Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'), part('second'));
}

export function fieldTime(at: Date): string {
  return new Date(wallClockMs(at.getTime())).toISOString().slice(0, 16);
}

/** Today there, as a `date` field holds it. */
export const fieldToday = (): string => fieldTime(new Date()).slice(0, 10);

/** The last millisecond of a day (`2026-05-02`) there; null where it is none. */
export function endOfDay(day: string): Date | null {
  const lastSecond = momentOf(`${day}T23:59:59`);
  return lastSecond === null ? null : new Date(lastSecond.getTime() + 999);
}

/** The moment that a field holds; null where it holds none. Of an hour that comes twice, the later. */
export function momentOf(field: string): Date | null {
  const wantedMs = Date.parse(`${field}Z`);
  if (Number.isNaN(wantedMs)) return null;
  // The zone's offset is that of a moment near by: a second look corrects the first across a change of clocks.
  let atMs = wantedMs;
  for (let look = 0; look < 2; look++) atMs += wantedMs - wallClockMs(atMs);
  return new Date(atMs);
}
