import type { SidePhases } from '../../measures.ts';
import type { ActiveSide } from '../read/activeSide.ts';
import type { Interval } from '../signal/interval.ts';
import { drivenSide } from './drivenSide.ts';
import { endStopOf } from './endStop.ts';
import { inrushOf } from './inrush.ts';

/** When the phases of a side begin and end, and what it drew at its start and at its stop, amperes less the offset. */
export interface FoundPhases extends SidePhases {
  readonly inrushAmps: number;
  /** The current while stalled at the end stop; null where the stroke ended without one. */
  readonly endStopAmps: number | null;
}

/**
 * Inrush, running current and end stop of one side. The running current is what lies between the inrush (`inrush.ts`)
 * and the end stop (`endStop.ts`). `pauses`: when the whole room stood still.
 */
export function findPhases(side: ActiveSide, pauses: readonly Interval[]): FoundPhases {
  const { timesS } = side.signal;
  const driven = drivenSide(side, pauses);
  const inrush = inrushOf(driven);
  const stop = endStopOf(driven, inrush);
  return {
    startS: side.active.fromS,
    inrushEndS: timesS[Math.min(inrush.end, timesS.length - 1)],
    endStopStartS: stop === null ? null : timesS[stop.from],
    endS: side.active.toS,
    pauses: [...pauses],
    inrushAmps: inrush.amps,
    endStopAmps: stop === null ? null : stop.amps,
  };
}
