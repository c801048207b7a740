import { measureStroke } from '../../../../analysis/measureStroke.ts';
import type { DoneAnalysis } from '../../../../analysis/measures.ts';
import { decodeStroke } from '../../../../ingest/json/stroke.ts';
import { toStrokeTrace } from '../../../../ingest/stroke.ts';
import { healthyCondition, type StrokeCondition } from '../../../../server/demo/simulator/condition.ts';
import type { SimulatedRoom } from '../../../../server/demo/simulator/room.ts';
import { type SimulatedStroke, simulateStroke } from '../../../../server/demo/simulator/simulateStroke.ts';
import { roomOf } from '../../../detection/fleets.ts';
import { done } from './measured.ts';

const SOME_ROOM = '01900000-0000-7000-8000-000000000001';

export interface MeasuredSimulation {
  readonly analysis: DoneAnalysis;
  readonly truth: SimulatedStroke['truth'];
}

/** One simulated stroke, decoded and measured as the service would, beside what really happened. */
export function measureSimulated(
  room: SimulatedRoom,
  direction: 'extend' | 'retract',
  changes: Partial<StrokeCondition>,
  seed: number,
): MeasuredSimulation {
  const { stroke, truth } = simulateStroke(room, healthyCondition(room, direction, changes), seed);
  const incoming = decodeStroke({ ...stroke, key: 'k', roomId: SOME_ROOM }, '');
  const analysis = done(measureStroke(toStrokeTrace(incoming, incoming.direction), roomOf(room)));
  return { analysis, truth };
}
