import type { ServiceKind } from '../../../analysis/trace.ts';
import type { LabelledFault } from '../../../server/demo/simulator/faults/fault.ts';
import type { PlannedStroke } from './calendar.ts';
import type { Condition } from './condition.ts';
import type { Wants } from './drawPlant.ts';
import type { Plant } from './plant.ts';
import type { Random } from './random.ts';

/** Work on the room, between the stroke before and this one. */
export interface PlannedService {
  readonly beforeStroke: number;
  readonly kind: ServiceKind;
  readonly side: string | null;
}

/** A fault in a room's history. */
export interface Fault extends LabelledFault {
  readonly services: readonly PlannedService[];
  /** Changes the physical parameters of a stroke from `startsStroke` on. */
  readonly apply: (condition: Condition, own: Random) => void;
}

/** A fault that can be drawn; null: this room does not show it plainly, draw another room. */
export interface FaultKind {
  readonly name: string;
  readonly wants: Wants;
  readonly draw: (
    plant: Plant,
    calendar: readonly PlannedStroke[],
    onset: number,
    random: Random,
  ) => Fault | null;
}
