import { isPart } from '../findings/isPart.ts';
import { sensorDoubt } from '../findings/sensorDoubt/sensorDoubt.ts';
import { NO_CHANGES } from '../findings/sensorDoubt/speaksAgainst.ts';
import { noteHeld } from '../findings/shortTravel/stallHeld.ts';
import { noteStay } from '../findings/stay.ts';
import { notMoving, stoodStill } from '../findings/stoodStill.ts';
import { noteCopper } from '../findings/strokeConditions.ts';
import type { Judgement, RoomEvent, StrokeEvent } from '../history.ts';
import type { DoneAnalysis, MeasureName } from '../measures.ts';
import type { RoomState } from '../roomState.ts';
import type { Direction } from '../trace.ts';
import { contextOf } from './context.ts';
import { excuseParts, isPartOfMovement } from './excusedParts.ts';
import { findTroubles } from './findTroubles.ts';
import { type JudgedStroke, judgeStroke } from './judgeStroke.ts';
import { keepWarnings } from './keepWarnings.ts';
import { learnStroke } from './learnStroke.ts';
import { lendStroke } from './lendStroke.ts';
import { takeService } from './takeService.ts';

export { beginRoom, type LentToRoom, type RoomState } from '../roomState.ts';
export { lentByRoom } from './lendStroke.ts';
export { limitsOf, summariseRoom } from './summary.ts';

/** Raise it with every change of results: the service then does every room anew. */
export const ANALYSIS_VERSION = 33;

/** The one order of a room's events: by time, services before strokes, then by id. */
export function orderEvents(a: RoomEvent, b: RoomEvent): number {
  if (a.atMs !== b.atMs) return a.atMs - b.atMs;
  if (a.type !== b.type) return a.type === 'service' ? -1 : 1;
  const idA = a.type === 'stroke' ? a.strokeId : a.serviceId;
  const idB = b.type === 'stroke' ? b.strokeId : b.serviceId;
  return idA < idB ? -1 : idA > idB ? 1 : 0;
}

/**
 * Takes the next event of a room's history into its state, which it changes, and answers what follows for this
 * event. Pure otherwise: the same events in the same order always give the same answers. Costs the same however
 * long the history. Events must come in the order of `orderEvents`; a stroke without analysis is misuse (TypeError).
 */
export function advanceRoom(state: RoomState, event: RoomEvent): Judgement {
  if (event.type === 'service') return takeService(state, event);
  if (event.excluded) return { expectations: [], warnings: [] };
  if (event.analysis.status === 'unusable') {
    state.unusableInARow += 1;
    const doubt = sensorDoubt(state, event, NO_CHANGES);
    return { expectations: [], warnings: keepWarnings(state, event, doubt) };
  }
  return takeStroke(state, event, event.analysis);
}

function takeStroke(state: RoomState, event: StrokeEvent, analysis: DoneAnalysis): Judgement {
  // Until the room is seen to move nobody knows where it stands.
  state.travel.followsUnread ||= state.unusableInARow > 0;
  state.unusableInARow = 0;
  const before = { ...state.stay };
  noteStay(state.stay, event.atMs, analysis.direction);
  const judged = judgeStroke(state, event, analysis);
  const stood = stoodStill(state, event, analysis, judged);
  if (stood.length > 0) {
    // What stands is where it was: nothing of this is travel, load or a rest, and nothing learns from it.
    const cameFrom = state.travel.followsUnread ? null : before.lastDirection;
    state.stay = before;
    const stuck = notMoving(state, analysis, judged, stood, cameFrom);
    return { expectations: judged.expectations, warnings: keepWarnings(state, event, stuck) };
  }
  state.usable[analysis.direction] += 1;
  const context = contextOf(state, event, analysis, judged);
  const isLetGo = isPartOfMovement(context);
  const { warnings, teaches } = findTroubles(context);
  if (teaches) learnStroke(context, judged);
  noteCopper(state, event, analysis);
  noteHeld(state.travel[analysis.direction], analysis);
  state.travel.followsUnread = false;
  lendStroke(state, event, analysis);
  state.suspicious = isSuspicious(state, judged, isPart(context));
  state.latest = latestOf(state, analysis.direction, judged);
  const { expectations } = judged;
  return { expectations: isLetGo ? excuseParts(context, expectations) : expectations, warnings };
}

/** The side that is furthest from its normal on this stroke; null while none has a normal. */
function latestOf(state: RoomState, direction: Direction, judged: JudgedStroke): RoomState['latest'] {
  let latest: RoomState['latest'] = null;
  for (const side of state.room.sides) {
    const running = judged.residual(side, 'runningAmps');
    if (running === null) continue;
    const percent = Math.round(100 * Math.expm1(running.residual));
    if (latest === null || Math.abs(percent) > Math.abs(latest.percent)) {
      latest = { side, direction, percent, beyond: running.beyondOwn };
    }
  }
  return latest;
}

/** What tells a trouble that has only begun to show: friction, a sensor or contact, and a travel that ends early. */
const TELLING: readonly MeasureName[] = ['runningAmps', 'endStopAmps', 'durationS'];
/** The sides come apart by a little now and then: so many times beyond its limits is something else. */
const FAR_BEYOND = 2;

/** Whether a whole stroke lay beyond its normal, so that the next ones must tell whether something is wrong. */
function isSuspicious(state: RoomState, judged: JudgedStroke, isPart: boolean): boolean {
  const isBeyond = (side: string) => {
    const lag = judged.residual(side, 'lagS');
    const isApart = lag !== null && Math.abs(lag.residual) > FAR_BEYOND * lag.limit;
    return isApart || TELLING.some((measure) => judged.residual(side, measure)?.beyond === true);
  };
  return !isPart && state.room.sides.some(isBeyond);
}
