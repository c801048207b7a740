import type { Random } from '../../../server/demo/simulator/random.ts';
import type { WormRoom } from './room.ts';

/** How a coach is used and looked after: all of it leaves a sound room sound. */
export interface Habits {
  /** Chance that a stay falls into a cold snap. */
  readonly coldSnaps: number;
  readonly supplies: 'weak' | 'strong' | 'mixed';
  /** Spread of the ground's slope, as a part of the running push. */
  readonly tilt: number;
  /** Chance per stroke that somebody sets the clamps to zero anew, and the spread of what is left. */
  readonly rezeroing: number;
  readonly zeroAmps: number;
  readonly services: number;
  readonly longStorage: boolean;
  /** Months in store each winter. */
  readonly winters: boolean;
  /** What a first stroke after months of standing takes more. */
  readonly standingSticks: number;
  /** Chance that a stroke is followed by the next within the hour. */
  readonly showing: number;
  readonly pausing: number;
  readonly breakingOff: number;
  /** Chance that a stroke lacks one side's record. */
  readonly leavingOut: number;
  /** Spread of the rubbing from stroke to stroke. */
  readonly wander: number;
  /** What a new room takes more at first. */
  readonly runIn: number;
  /** How long the controller or the thumb lets a motor stand stalled. */
  readonly holdS: number;
  readonly holdSpreadS: number;
}

export function drawHabits(random: Random, { sides, logger }: WormRoom): Habits {
  const thumb = random.chance(0.4);
  const leastAmps = Math.min(...sides.map(({ runAmps }) => runAmps));
  // A zero that no rest shows, or shows without its sign, must stay within what a current's own wander hides.
  const zeroAmps = Math.min(
    random.uniform(0.03, 0.15),
    (logger.leadInS > 0 && logger.signed ? 0.1 : 0.02) * leastAmps,
  );
  return {
    coldSnaps: random.chance(0.5) ? random.uniform(0.03, 0.12) : 0,
    supplies: random.pick(['weak', 'strong', 'mixed', 'mixed']),
    tilt: random.uniform(0, 0.035),
    rezeroing: random.chance(0.4) ? 0.03 : 0,
    zeroAmps,
    services: random.chance(0.4) ? random.integer(1, 3) : 0,
    longStorage: random.chance(0.3),
    winters: random.chance(0.6),
    standingSticks: random.uniform(0, 0.12),
    showing: random.uniform(0.02, 0.2),
    pausing: random.chance(0.4) ? random.uniform(0.02, 0.08) : 0,
    breakingOff: random.chance(0.25) ? random.uniform(0.01, 0.04) : 0,
    leavingOut: random.chance(0.15) ? 0.03 : 0,
    wander: random.uniform(0.006, 0.02),
    runIn: random.uniform(0, 0.04),
    holdS: random.uniform(0.3, thumb ? 1.2 : 1.9),
    holdSpreadS: thumb ? 0.8 : 0.05,
  };
}
