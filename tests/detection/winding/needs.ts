import type { Drive } from '../../../analysis/trace.ts';
import type { Ending, Pacing } from './room.ts';

/** What a fault needs of its room and its logger so that it can happen and can be seen at all. */
export interface RoomNeeds {
  readonly sides?: 1 | 2;
  readonly pacings?: readonly Pacing[];
  readonly endings?: readonly Ending[];
  readonly drives?: readonly Drive[];
  /** Of each motor, least and most. */
  readonly runningAmps?: readonly [number, number];
  /** Stall current as a multiple of the running current. */
  readonly leastStallRatio?: number;
  readonly tellsTeeth?: boolean;
  readonly tellsRating?: boolean;
  readonly recordsSupply?: boolean;
  readonly leastRateHz?: number;
  /** The record begins with a rest, so that a moved zero shows. */
  readonly recordsRest?: boolean;
  readonly onMotorLead?: boolean;
  readonly tellsDirection?: boolean;
  readonly sendsTimes?: boolean;
}
