import type { FindingContext } from '../findings/finding.ts';
import { scaleChange } from '../findings/sensorScale.ts';
import type { StrokeEvent } from '../history.ts';
import type { DoneAnalysis, Doubt } from '../measures.ts';
import { conditionsOf, type JudgedStroke } from './judgeStroke.ts';
import type { RoomState } from './state.ts';

/** Doubts that leave the current usable: a steady offset is measured at rest and taken off. */
const HARMLESS: ReadonlySet<Doubt> = new Set(['offset']);

export interface StrokeContext extends FindingContext {
  /** Changes of scale by side, natural logarithm. */
  readonly scales: ReadonlyMap<string, number>;
}

/** Everything the detectors look at, with the sides that are not to be trusted on this stroke hidden from them. */
export function contextOf(
  state: RoomState,
  event: StrokeEvent,
  analysis: DoneAnalysis,
  judged: JudgedStroke,
): StrokeContext {
  const { direction } = analysis;
  const conditions = conditionsOf(event, analysis);
  const doubtful = new Set<string>();
  for (const { side, doubt } of analysis.doubts) {
    if (doubt === 'clock') for (const name of state.room.sides) doubtful.add(name);
    else if (!HARMLESS.has(doubt)) doubtful.add(side);
  }
  const residual: FindingContext['residual'] = (side, measure) => {
    if (doubtful.has(side)) return null;
    if ((measure === 'share' || measure === 'lagS') && doubtful.size > 0) return null;
    return judged.residual(side, measure);
  };
  const context = { state, event, analysis, direction, conditions, doubtful, residual };
  const scales = new Map<string, number>();
  for (const side of state.room.sides) {
    const change = scaleChange(context, side);
    if (change !== null) scales.set(side, change);
  }
  for (const side of scales.keys()) doubtful.add(side);
  return { ...context, scales };
}
