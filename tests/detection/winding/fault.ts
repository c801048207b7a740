import type { ServiceKind } from '../../../analysis/trace.ts';
import { type LabelledFault, type LabelParts, labelOf } from '../../../server/demo/simulator/faults/fault.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import type { RoomNeeds } from './needs.ts';
import type { WindingRoom } from './room.ts';
import type { StrokeState } from './strokeState.ts';

/** A fault in one room's life: the truth about it, and what it does to each stroke from `bearsFrom` on. */
export interface WindingFault extends LabelledFault {
  /** First stroke that `bear` is asked for: a harmless part of the story may come before the fault. */
  readonly bearsFrom: number;
  /** First stroke after the repair; infinity: never repaired. */
  readonly untilStroke: number;
  /** Work that belongs to its story. */
  readonly services: readonly {
    readonly beforeStroke: number;
    readonly kind: ServiceKind;
    readonly side: string | null;
  }[];
  readonly bear: (state: StrokeState, index: number, random: Random) => void;
}

/** A fault that can be drawn for any room that has what it needs. */
export interface FaultRecipe {
  readonly name: string;
  readonly needs: RoomNeeds;
  /** Work that cures it, where it is cured in some lives. */
  readonly cure?: ServiceKind;
  readonly draw: (room: WindingRoom, random: Random, strokes: number) => WindingFault;
}

/** Ten strokes each way are healthy before any fault. */
const LEAST_HEALTHY = 20;
/** So many strokes remain at least. */
const LEAST_FAULTY = 24;

export function drawOnset(random: Random, strokes: number, faulty = LEAST_FAULTY): number {
  return random.integer(LEAST_HEALTHY + 4, Math.max(LEAST_HEALTHY + 4, Math.min(strokes - faulty, 150)));
}

/** A fault that begins at a stroke and stays. */
export function lastingFault(
  name: string,
  onsetStroke: number,
  label: LabelParts,
  bear: WindingFault['bear'],
): WindingFault {
  return {
    name,
    startsStroke: onsetStroke,
    bearsFrom: onsetStroke,
    untilStroke: Number.POSITIVE_INFINITY,
    services: [],
    label: labelOf(onsetStroke, label),
    bear,
  };
}
