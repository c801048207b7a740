const DAY_MINUTES = 1440;

/** From a time of day to another, as `22:00` or `22:00:00`; over midnight where the second comes first in the day. */
interface QuietHours {
  readonly from: string;
  readonly to: string;
}

/**
 * When the quiet hours that hold at a moment end; null where none do. Days on which clocks are changed included: it is
 * the end by the clock on the wall of `timeZone`.
 */
export function quietUntil(now: Date, { from, to }: QuietHours, timeZone: string): Date | null {
  const [start, end, here] = [minutesOf(from), minutesOf(to), localMinutes(now, timeZone)];
  const isQuiet = start < end ? here >= start && here < end : here >= start || here < end;
  if (!isQuiet) return null;
  const whole = Math.floor(now.getTime() / 60_000) * 60_000;
  const until = new Date(whole + wrapped(end - here) * 60_000);
  // Where clocks were changed in between, the wall shows another time then.
  const late = wrapped(localMinutes(until, timeZone) - end + DAY_MINUTES / 2) - DAY_MINUTES / 2;
  return new Date(until.getTime() - late * 60_000);
}

function minutesOf(time: string): number {
  const [hours, minutes] = time.split(':').map(Number);
  return hours * 60 + minutes;
}

function localMinutes(at: Date, timeZone: string): number {
  return minutesOf(
    new Intl.DateTimeFormat('en-GB', {
      timeZone,
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    }).format(at),
  );
}

function wrapped(minutes: number): number {
  return ((minutes % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES;
}
