import type { StrokeEvent } from '../../../../analysis/history.ts';
import type { DoneAnalysis, SideMeasures } from '../../../../analysis/measures.ts';
import { contextOf, type StrokeContext } from '../../../../analysis/room/context.ts';
import { advanceRoom, type RoomState } from '../../../../analysis/room/fold.ts';
import { judgeStroke } from '../../../../analysis/room/judgeStroke.ts';
import type { Direction } from '../../../../analysis/trace.ts';
import { foldAll } from './folded.ts';
import { ROOM } from './handMade.ts';
import { strokeEvents, type Told } from './strokeEvents.ts';

/** What is different about a side's measures of one stroke. */
export type Change = (measured: SideMeasures, direction: Direction) => Partial<SideMeasures>;

/** By side; `all` for every side. */
export type Changes = Readonly<Partial<Record<string, Change>>>;

const LEARNT = 40;

/** A stroke with what was measured of it changed; one that could not be measured as it is. */
export function remeasured(
  event: StrokeEvent,
  change: (analysis: DoneAnalysis) => Partial<DoneAnalysis>,
): StrokeEvent {
  const { analysis } = event;
  return analysis.status !== 'done' ? event : { ...event, analysis: { ...analysis, ...change(analysis) } };
}

/** A stroke with sides that are changed. */
export function changed(event: StrokeEvent, changes: Changes): StrokeEvent {
  return remeasured(event, ({ sides, direction }) => ({
    sides: Object.fromEntries(
      Object.entries(sides).map(([side, measured]) => {
        const change = changes[side] ?? changes.all;
        return [side, change === undefined ? measured : { ...measured, ...change(measured, direction) }];
      }),
    ),
  }));
}

/** What the detectors see of each stroke after a healthy room has learnt its normal; `of` counts from there. */
export function contextsAfterLearning(
  count: number,
  of: (index: number) => Changes,
  told: Partial<Told> = {},
  always: Changes = {},
): StrokeContext[] {
  const events = strokeEvents(LEARNT + count, ROOM, 11, () => told).map((event) => changed(event, always));
  const { state } = foldAll(ROOM, events.slice(0, LEARNT));
  return events.slice(LEARNT).map((event, index) => seen(state, changed(event, of(index))));
}

/** As the fold goes on after it, so that memories are those of a room in use. */
function seen(state: RoomState, event: StrokeEvent): StrokeContext {
  const { analysis } = event;
  if (analysis.status !== 'done') throw new TypeError('a stroke that can be used is expected here');
  const before = structuredClone(state);
  advanceRoom(state, event);
  return contextOf(before, event, analysis, judgeStroke(before, event, analysis));
}
