import type { Residual } from '../baseline/judge.ts';
import { stallFollowsSupply } from '../baseline/stallFollowsSupply.ts';
import { MEASURE_INDEX } from '../measures.ts';
import type { RoomState } from '../roomState.ts';
import { median } from '../statistics/median.ts';
import type { FindingContext } from './finding.ts';
import { stopFollowsLoad } from './sensorDoubt/stopFollowsLoad.ts';

/**
 * A degree colder raises the stall current by 0.393 % (IEC 60028) and the running current by half a per cent as a rule
 * (common practice, no source), by eight tenths in a stiff room (a guess, no source). So a rise of the running current by up to so
 * many times the stall's may be cold, and is not counted.
 */
const COLD_PER_STALL = 2;
/** No cold that anybody camps in does more, natural logarithm: forty degrees of eight tenths; a guess, no source. */
const MOST_COLD = 0.35;
/** How much of what unrecorded weather may do a stall that serves as thermometer leaves open: a guess, no source. */
const THERMOMETER_LEAVES = 0.4;
/** What the stiffest rooms do in the cold beyond what is allowed for, as a part of that: a guess, no source. */
const COLD_DOUBT = 0.4;

/**
 * Stalls that differ by more than this from stroke to stroke (standard deviation, natural logarithm) are no thermometer:
 * the middle one of three is off by twenty degrees of 0.393 % then.
 */
export const MOST_STALL_SPREAD = 0.1;

/**
 * Whether the stalls of the room read the same from stroke to stroke, by their normals either way; a switch that is let go
 * as the current rises cuts them.
 */
function readsWell({ state }: FindingContext): boolean {
  return state.channels.every(
    ({ fits }) => (fits[MEASURE_INDEX.endStopAmps]?.scale ?? 0) < MOST_STALL_SPREAD,
  );
}

/**
 * The rise that cold explains where nobody recorded the temperature: copper conducts better in the cold, so the stall
 * current is a thermometer of its own. Null where the temperature is recorded, and where the stall was not read, or not
 * well, either. Natural logarithm, zero where it is warm.
 */
export function coldAllowance(context: FindingContext): number | null {
  const { state, conditions } = context;
  if (conditions[1] !== null || !readsWell(context)) return null;
  const rises = state.room.sides.map((side) => coldRise(state, side));
  const read = rises.filter((rise) => rise !== null);
  if (read.length < rises.length) return null;
  return Math.min(MOST_COLD, COLD_PER_STALL * Math.min(...read));
}

/**
 * How much of a side's stall current cold accounts for, natural logarithm, never below zero: what is left of its rise
 * when a stronger supply, which would have shortened the stroke as much, and what its own scatter may be of it, a standard
 * error, are taken off. Null where no stall at the end stop was read, or one that rises with the load alone: an inrush is over
 * too soon to be a thermometer.
 */
function coldRise(state: RoomState, side: string): number | null {
  const memory = state.scale[side];
  if (memory.endStop.length < 2 || stopFollowsLoad(state, side)) return null;
  if (!state.channels.every((channel) => channel.side !== side || stallFollowsSupply(channel))) return null;
  const stall = median(memory.endStop);
  const faster = memory.duration.length > 0 ? Math.min(0, median(memory.duration)) : 0;
  return Math.max(0, stall + faster - stallError(state, side));
}

/** Standard deviation of a median of so many values, as a part of one's over the root of their number: of the normal's. */
const MEDIAN_SPREAD = 1.25;

/** Standard error of the middle one of a side's latest stalls, natural logarithm: of the direction that reads them worse. */
function stallError({ channels, scale }: RoomState, side: string): number {
  const spreads = channels
    .filter((channel) => channel.side === side)
    .map(({ fits }) => fits[MEASURE_INDEX.endStopAmps]?.scale ?? 0);
  return (MEDIAN_SPREAD * Math.max(...spreads)) / Math.sqrt(scale[side].endStop.length);
}

/** What unrecorded conditions may do to strokes in a row besides, standard deviation; `cold`: what was allowed for. */
export function unseenWeather({ unrecorded }: Residual, cold: number | null): number {
  if (cold === null) return unrecorded;
  // Doubt counts twice where it is extrapolated: all together is no more than any cold does.
  const stiffer = Math.min(COLD_DOUBT * cold, (MOST_COLD - cold) / 2);
  return Math.hypot(THERMOMETER_LEAVES * unrecorded, stiffer);
}

/** How much of a stroke's difference is taken for the season, and of how large a one at most: guesses, no source. */
const SEASON_FOLLOW = 0.08;
const MOST_AT_ONCE = 0.05;

/** Unseasonable weather comes slowly and goes no further than `most`; what comes at once, or goes further, is none. */
export function followSeason(season: number, rise: number, most: number): number {
  const step = Math.max(-MOST_AT_ONCE, Math.min(MOST_AT_ONCE, rise - season));
  return Math.max(-most, Math.min(most, season + SEASON_FOLLOW * step));
}
