import { relearn } from '../baseline/channel.ts';
import type { FindingContext } from '../findings/finding.ts';
import { restLoad, updateLoad } from '../findings/loadShift.ts';
import { risingDraw } from '../findings/risingDraw.ts';
import { stallSpike } from '../findings/stallSpike.ts';
import { unevenSides } from '../findings/unevenSides.ts';
import type { Judgement, RoomEvent, ServiceEvent, StrokeEvent } from '../history.ts';
import type { DoneAnalysis } from '../measures.ts';
import type { Warning } from '../warning.ts';
import { judgeStroke, learnStroke } from './judgeStroke.ts';
import { keepWarnings } from './keepWarnings.ts';
import type { RoomState } from './state.ts';

export { beginRoom, type RoomState } from './state.ts';
export { limitsOf, summariseRoom } from './summary.ts';

/** Raise it with every change of results: the service then does every room anew. */
export const ANALYSIS_VERSION = 1;

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
  if (event.analysis.status === 'unusable') {
    if (!event.excluded) state.unusableInARow += 1;
    return { expectations: [], warnings: [] };
  }
  if (event.excluded) return { expectations: [], warnings: [] };
  return takeStroke(state, event, event.analysis);
}

function takeStroke(state: RoomState, event: StrokeEvent, analysis: DoneAnalysis): Judgement {
  const { direction } = analysis;
  state.unusableInARow = 0;
  state.usable[direction] += 1;
  const judged = judgeStroke(state, event, analysis);
  const context: FindingContext = { state, event, analysis, direction, residual: judged.residual };
  const warnings: Warning[] = [];
  const load = updateLoad(context);
  if (load !== null) {
    warnings.push(...keepWarnings(state, event, risingDraw(context, load)));
    warnings.push(...keepWarnings(state, event, unevenSides(context, load)));
  }
  warnings.push(...keepWarnings(state, event, stallSpike(context)));
  const troubled = state.open.some((open) => open.kind === 'rising-draw' || open.kind === 'uneven-sides');
  if (!troubled) learnStroke(state, event, analysis, judged);
  state.latest = latestOf(state, context);
  return { expectations: judged.expectations, warnings };
}

/** The side that is furthest above its normal on this stroke. */
function latestOf(state: RoomState, context: FindingContext): RoomState['latest'] {
  let latest: RoomState['latest'] = null;
  for (const side of state.room.sides) {
    const judged = context.residual(side, 'runningAmps');
    if (judged === null) continue;
    const percent = Math.round(100 * Math.expm1(judged.residual));
    if (latest === null || latest.percent === null || Math.abs(percent) > Math.abs(latest.percent)) {
      latest = { side, percent };
    }
  }
  return latest;
}

/**
 * A service opens a new baseline that starts from the old one's shape, unless a trouble is open: then the old normal
 * stands, and the strokes after show whether the work helped.
 */
function takeService(state: RoomState, event: ServiceEvent): Judgement {
  const troubled = state.open.some((open) => open.kind === 'rising-draw' || open.kind === 'uneven-sides');
  if (!troubled) {
    for (const channel of state.channels) {
      if (event.side === null || channel.side === event.side) relearn(channel);
    }
  }
  restLoad(state.load);
  return { expectations: [], warnings: [] };
}
