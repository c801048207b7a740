import { isBetweenSides, MEASURE_INDEX } from '../measures.ts';
import type { Channel } from './channel.ts';
import type { Residual } from './judge.ts';

/**
 * How fast the level follows a change that is no fault, as a part of the difference: in either direction, and faster
 * down once the latest strokes ran easier. And how far up it may ever go, standard deviations of a stroke. Guesses, no
 * source.
 */
const FOLLOW = 0.04;
const FOLLOW_DOWN = 0.25;
const MOST_FOLLOWED_UP = 2;
/**
 * The latest strokes are a moving mean of residuals over about four; they run easier if it is this many deviations
 * below 0.
 */
const RECENT_PART = 0.25;
const EASIER_SIGMAS = 0.8;

/**
 * Lets the level follow a drift that is no fault: slowly either way, faster downwards once several strokes in a row
 * ran easier than the reference. A room that runs easier than it did is a new normal at once; one that runs harder
 * is believed only little by little and never further than two standard deviations, or a slow fault would be
 * swallowed. Strokes beyond the limits move nothing.
 */
export function follow(channel: Channel, judged: Residual): void {
  if (judged.beyond) return;
  const index = MEASURE_INDEX[judged.measure];
  const fit = channel.fits[index];
  if (fit === null) return;
  const { residual } = judged;
  channel.recent[index] += RECENT_PART * (residual - channel.recent[index]);
  let level = channel.level[index] + FOLLOW * residual;
  // A measure that compares the sides has no easier direction.
  const symmetric = isBetweenSides(judged.measure);
  if (!symmetric && channel.recent[index] < -EASIER_SIGMAS * fit.scale) {
    level += FOLLOW_DOWN * channel.recent[index];
    channel.recent[index] *= 1 - FOLLOW_DOWN;
  }
  const most = MOST_FOLLOWED_UP * fit.scale;
  channel.level[index] = symmetric ? Math.max(-most, Math.min(most, level)) : Math.min(most, level);
}
