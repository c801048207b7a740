import type { HistoryPlan } from './plan.ts';
import type { Random } from './random.ts';

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
/** 60 strokes, 30 trips a year. */
const DAYS_PER_TRIP = 365.25 / 30;
/** The middle of summer on the northern half, day of the year. */
const WARMEST_DAY = 200;
/** Afternoons, when rooms go out, against mornings, when they come in. */
const DAY_SWING_C = 4;

/** One stroke's place in time and in the weather. */
interface Appointment {
  readonly atMs: number;
  readonly ambientC: number;
}

function dayOfYear(atMs: number): number {
  const year = Date.UTC(new Date(atMs).getUTCFullYear(), 0, 1);
  return (atMs - year) / DAY_MS;
}

function atHour(dayMs: number, hour: number): number {
  return Math.floor(dayMs / DAY_MS) * DAY_MS + hour * HOUR_MS;
}

/**
 * When a room goes out and comes in: trips of some days with drives between them, 60 strokes a year, storage where
 * the plan's variants put it. An extend and the retract after it are one set-up on one camp.
 */
export function calendar(plan: HistoryPlan, random: Random): Appointment[] {
  const days: number[] = [];
  let day = 0;
  const trips = Math.ceil(plan.strokes / 2);
  for (let trip = 0; trip < trips; trip++) {
    for (const { storage } of plan.variants) if (storage?.beforeTrip === trip) day += storage.days;
    const away = random.uniform(0.4, 1.6) * DAYS_PER_TRIP;
    const stay = away * random.uniform(0.15, 0.7);
    days.push(day, day + Math.max(stay, 1));
    day += Math.max(away, Math.max(stay, 1) + 0.6);
  }
  days.length = plan.strokes;
  const spanDays = days[days.length - 1] ?? 0;
  const stretch =
    plan.endsAtMs === null || spanDays === 0 ? 1 : (plan.endsAtMs - plan.startsAtMs) / DAY_MS / spanDays;

  let last = Number.NEGATIVE_INFINITY;
  return days.map((since, stroke): Appointment => {
    const extending = stroke % 2 === 0;
    const dayMs = plan.startsAtMs + since * stretch * DAY_MS;
    const hour = extending ? random.uniform(14.5, 19) : random.uniform(8, 11.5);
    const latest = plan.endsAtMs ?? Number.POSITIVE_INFINITY;
    const planned = Math.min(atHour(dayMs, hour), latest);
    const atMs = Math.round(Math.max(planned, last + 2 * HOUR_MS) / 1000) * 1000;
    last = atMs;
    const season = Math.cos((2 * Math.PI * (dayOfYear(atMs) - WARMEST_DAY)) / 365.25);
    const { meanC, seasonC, weatherC } = plan.climate;
    const swing = extending ? DAY_SWING_C : -DAY_SWING_C;
    return { atMs, ambientC: meanC + seasonC * season + swing + random.normal(0, weatherC) };
  });
}
