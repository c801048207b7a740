import type { StrokeCondition } from './condition.ts';
import type { PlannedFault } from './faults/fault.ts';
import type { PlannedService } from './plannedService.ts';
import type { Random } from './random.ts';

/** Something that happens to healthy rooms. */
export interface HealthyVariant {
  readonly name: string;
  /** Days of rest put in before the trip of this index. */
  readonly storage: { readonly beforeTrip: number; readonly days: number } | null;
  readonly services: readonly PlannedService[];
  readonly change: (condition: StrokeCondition, strokeIndex: number, random: Random) => StrokeCondition;
}

/** The weather where the room travels. */
interface Climate {
  readonly meanC: number;
  /** Half the swing from winter to summer. */
  readonly seasonC: number;
  /** Spread from one trip to the next. */
  readonly weatherC: number;
}

/** What is to happen to a room over its history. */
export interface HistoryPlan {
  readonly startsAtMs: number;
  /** Given: the calendar is stretched or shrunk so that the last stroke falls at about this time. */
  readonly endsAtMs: number | null;
  readonly strokes: number;
  readonly climate: Climate;
  readonly faults: readonly PlannedFault[];
  readonly variants: readonly HealthyVariant[];
  readonly services: readonly PlannedService[];
}
