import { isReady, LEARNING_STROKES } from '../baseline/channel.ts';
import { limitsOfMeasure } from '../baseline/judge.ts';
import type { Limits, RoomSummary } from '../history.ts';
import { MEASURE_NAMES, type MeasureName } from '../measures.ts';
import { DIRECTIONS, type Direction } from '../trace.ts';
import { SEVERITIES, type Severity, type Verdict } from '../warning.ts';
import type { RoomState } from './state.ts';

/** Strokes in a row that could not be used, after which the room's state is not known any more. */
const UNKNOWN_AFTER = 3;

/** The room's verdict in a word and a plain sentence, from the state after its latest event. */
export function summariseRoom(state: RoomState): RoomSummary {
  const usableStrokes = { ...state.usable };
  const worst = worstSeverity(state);
  const verdict = verdictOf(state, worst);
  return { verdict, headline: headlineOf(state, verdict), usableStrokes, openWarnings: [...state.open] };
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
  return DIRECTIONS.some((direction) => state.usable[direction] < LEARNING_STROKES) ? 'learning' : 'clear';
}

function headlineOf(state: RoomState, verdict: Verdict): string {
  switch (verdict) {
    case 'watch':
    case 'service':
    case 'stop': {
      const worst = [...state.open].sort(
        (a, b) =>
          SEVERITIES.indexOf(b.severity) - SEVERITIES.indexOf(a.severity) || a.openedAtMs - b.openedAtMs,
      )[0];
      return worst.headline;
    }
    case 'unknown':
      return 'The latest records could not be used: see to the logger.';
    case 'learning': {
      const [extend, retract] = DIRECTIONS.map((direction) =>
        Math.min(LEARNING_STROKES, state.usable[direction]),
      );
      return `Learning this room's normal: ${extend} of ${LEARNING_STROKES} extends and ${retract} of ${LEARNING_STROKES} retracts so far.`;
    }
    case 'clear':
      return `No trouble found. ${latestSentence(state)}`;
  }
}

function latestSentence(state: RoomState): string {
  const percent = state.latest?.percent ?? null;
  if (percent === null) return 'The latest stroke has no normal to compare with yet.';
  const who = state.room.sides.length > 1 ? `The ${state.latest?.side} side` : 'The motor';
  if (percent === 0) return `${who} drew just its normal on the latest stroke.`;
  return `${who} drew ${Math.abs(percent)} % ${percent > 0 ? 'more' : 'less'} than its normal on the latest stroke, inside its usual spread.`;
}

/** The limits of every measure that has a baseline, by side and direction. */
export function limitsOf(
  state: RoomState,
): { side: string; direction: Direction; measure: MeasureName; limits: Limits }[] {
  return state.channels.filter(isReady).flatMap((channel) =>
    MEASURE_NAMES.flatMap((measure, index) => {
      const limits = limitsOfMeasure(channel, index);
      return limits === null ? [] : [{ side: channel.side, direction: channel.direction, measure, limits }];
    }),
  );
}
