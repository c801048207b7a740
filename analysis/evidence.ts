import type { Doubt } from './measures.ts';
import type { Direction } from './trace.ts';

/**
 * What a warning stands on, by names that the API hands on: rounded, as it was told. It is kept with the open warning, and
 * detectors hold the next strokes against what was said; whatever else they must remember has a memory of its own. Which of
 * these a kind has is told here; a detector writes no other.
 */
export interface Evidence {
  /** `rising-draw`: above the room's own normal, per cent; missing where a side stood still. */
  readonly risePercent?: number;
  /** The latest stroke of the side that is worst; null: it has no normal. `rising-draw`. */
  readonly expectedAmps?: number | null;
  readonly measuredAmps?: number;
  /** How many deviations of a healthy stroke that is. `rising-draw`, `uneven-sides`, `late-side`. */
  readonly sigmas?: number | null;
  /** The stretch of the travel, 0 to 1: of a `rising-draw` that has one, and of a `dropped-load`. */
  readonly from?: number;
  readonly to?: number;
  /** The way that the stretch of a `rising-draw` was found on. */
  readonly way?: Direction;
  /** `dropped-load`: how many times a side lost its load for a moment. */
  readonly moments?: number;

  /** `stall-spike`: of the latest strokes so many had peaks, so high above the running current; their place, 0 to 1. */
  readonly strokesWithSpikes?: number;
  readonly strokesLookedAt?: number;
  readonly heightPercent?: number;
  readonly position?: number | null;

  /** `uneven-sides`: by how many points of a hundred the share moved, and what it is now, 0 to 1. */
  readonly sharePoints?: number;
  readonly shareNow?: number;

  /** `late-side`: seconds later than normal, and the latest stroke's lag. */
  readonly laterS?: number;
  readonly lagS?: number | null;

  /** `heavy-room`: what it draws; and what that is told against, with how many times as much it is. */
  readonly runningAmps?: number;
  readonly modelAmps?: number;
  readonly timesModel?: number;
  readonly stallAmps?: number;
  readonly partOfStall?: number;
  readonly limitAmps?: number;
  readonly timesLimit?: number;

  /** `short-travel`: how early it ends, per cent, and how many of the latest strokes did. */
  readonly shortPercent?: number;
  readonly shortStrokes?: number;
  /** Whether the motor stalls there; and whether the room, or one side of it, did not move at all (`rising-draw`, too). */
  readonly stalled?: boolean;
  readonly stoodStill?: boolean;

  /** `weak-supply`: the mean while the room moved, and what a sound supply holds. */
  readonly meanVolts?: number;
  readonly leastVolts?: number;

  /** `draw-rebound`: how far the draw fell with the work, how far it climbed back, and how fast since and before. */
  readonly fellPercent?: number;
  readonly climbedPercent?: number;
  readonly percentPerStroke?: number;
  readonly percentPerStrokeBefore?: number;

  /** `sensor-doubt`: what is doubted, and why, in a sentence. */
  readonly doubt?: Doubt;
  readonly detail?: string;
  /** What the sensor read at rest when that was doubted; missing for any other doubt, and where no rest was seen. */
  readonly restAmps?: number;
}
