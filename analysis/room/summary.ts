import { isBorrowing, isReady } from '../baseline/channel.ts';
import { limitsOfMeasure, normalOfMeasure } from '../baseline/judge.ts';
import type { Limits, RoomSummary } from '../history.ts';
import { MEASURE_NAMES, type MeasureName } from '../measures.ts';
import { nameSide, wayOf } from '../names.ts';
import type { RoomState } from '../roomState.ts';
import { DIRECTIONS, type Direction } from '../trace.ts';
import { SEVERITIES, type Severity, type Verdict } from '../warning.ts';
import { asTold } from './bothSides.ts';
import { borrowedOf, isLearning, strokesToLearn } from './learning.ts';

/** Strokes in a row that could not be used, after which the room's state is not known any more. */
const UNKNOWN_AFTER = 3;

/** The room's verdict in a word and a plain sentence, from the state after its latest event. */
export function summariseRoom(state: RoomState): RoomSummary {
  const usableStrokes = { ...state.usable };
  const worst = worstSeverity(state);
  const verdict = verdictOf(state, worst);
  const headline = headlineOf(state, verdict);
  const openWarnings = asTold(state.open, state.room.sides);
  return { verdict, headline, usableStrokes, openWarnings, borrowed: borrowedOf(state) };
}

function worstSeverity(state: RoomState): Severity | null {
  let worst = -1;
  for (const warning of state.open) worst = Math.max(worst, SEVERITIES.indexOf(warning.severity));
  return worst < 0 ? null : SEVERITIES[worst];
}

function verdictOf(state: RoomState, worst: Severity | null): Verdict {
  if (worst !== null) return worst;
  const seen = state.usable.extend + state.usable.retract;
  if (state.unusableInARow >= UNKNOWN_AFTER) return 'unknown';
  if (seen === 0) return state.unusableInARow > 0 ? 'unknown' : 'learning';
  return DIRECTIONS.some((direction) => isLearning(state, direction)) ? 'learning' : 'clear';
}

function headlineOf(state: RoomState, verdict: Verdict): string {
  switch (verdict) {
    case 'watch':
    case 'service':
    case 'stop': {
      const worst = asTold(state.open, state.room.sides).sort(
        (a, b) =>
          SEVERITIES.indexOf(b.severity) - SEVERITIES.indexOf(a.severity) || a.openedAtMs - b.openedAtMs,
      )[0];
      return worst.headline;
    }
    case 'unknown':
      return 'The latest records could not be used: see to the logger.';
    case 'learning': {
      const [extends_, retracts] = DIRECTIONS.map((direction) => {
        const needed = strokesToLearn(state, direction);
        return `${Math.min(needed, state.usable[direction])} of ${needed} strokes ${wayOf(direction)}`;
      });
      return `Learning this room's normal: ${extends_} and ${retracts} so far.`;
    }
    case 'clear':
      return `No trouble found. ${borrowedSentence(state)}${latestSentence(state)}`;
  }
}

/** While any direction has fewer strokes than it would need alone. */
function borrowedSentence(state: RoomState): string {
  const borrows = state.channels.some(isBorrowing) && borrowedOf(state) !== null;
  // Not by how many: whoever sees the room alone must not learn of others.
  return borrows ? 'Judged by others of the same model until it has its own normal. ' : '';
}

function latestSentence(state: RoomState): string {
  if (state.latest === null) return 'The latest stroke has no normal to compare with yet.';
  const { side, direction, percent, beyond } = state.latest;
  const who = nameSide(side, state.room.sides);
  const when = `When the room last ${direction === 'extend' ? 'went out' : 'came in'}, ${who}`;
  if (percent === 0) return `${when} drew its normal current.`;
  const spread = beyond
    ? 'outside its usual range. One stroke alone raises no warning; the next ones will tell.'
    : 'within its usual range.';
  return `${when} drew ${Math.abs(percent)} % ${percent > 0 ? 'more' : 'less'} than its normal: ${spread}`;
}

/** The limits of every measure that has a baseline, by side and direction, and what a rise of it is counted from. */
export function limitsOf(
  state: RoomState,
): { side: string; direction: Direction; measure: MeasureName; limits: Limits; normal: number }[] {
  return state.channels.filter(isReady).flatMap((channel) =>
    MEASURE_NAMES.flatMap((measure) => {
      const limits = limitsOfMeasure(channel, measure);
      const normal = normalOfMeasure(channel, measure);
      if (limits === null || normal === null) return [];
      return [{ side: channel.side, direction: channel.direction, measure, limits, normal }];
    }),
  );
}
