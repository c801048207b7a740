import { mean } from 'simple-statistics';
import { type Channel, isReady } from '../baseline/channel.ts';
import { regressors } from '../baseline/conditions.ts';
import type { LentPrior } from '../baseline/lent.ts';
import { LEARNING_STROKES } from '../baseline/strokesNeeded.ts';
import type { Borrowed } from '../history.ts';
import { MEASURE_INDEX } from '../measures.ts';
import type { RoomState } from '../roomState.ts';
import { quadraticForm } from '../statistics/shrunkRegression.ts';
import type { Direction } from '../trace.ts';

/** Strokes of a direction until the room's verdict is more than `learning` (contract, section 5: status). */
export function strokesToLearn(state: RoomState, direction: Direction): number {
  const channels = movedChannels(state, direction);
  const lent = channels.map((channel) => channel.lent);
  if (lent.length === 0 || lent.includes(null)) return LEARNING_STROKES;
  const needed = 1 + Math.max(...lent.map((each) => each?.needed ?? 0));
  const seen = state.usable[direction];
  // Work on the mechanism has it learn anew what was lent.
  const lacking = channels.filter((channel) => !isReady(channel));
  const missing = lacking.map((channel) => Math.max(1, channel.needed - channel.values.length));
  return Math.min(LEARNING_STROKES, seen < needed ? needed : seen + Math.max(0, ...missing));
}

/** Whether too few usable strokes of a direction were seen, or a borrowed normal of it is not ready. */
export function isLearning(state: RoomState, direction: Direction): boolean {
  const seen = state.usable[direction];
  if (seen >= LEARNING_STROKES) return false;
  return seen < strokesToLearn(state, direction);
}

/** Those of the sides that were recorded; of all sides while none was. */
function movedChannels(state: RoomState, direction: Direction): Channel[] {
  const channels = state.channels.filter((channel) => channel.direction === direction);
  const moved = channels.filter(({ values }) => values.length > 0);
  return moved.length > 0 ? moved : channels;
}

/** Less of the level than this is no longer worth telling. */
const LEAST_SHARE = 0.02;

/** What the room borrows now; null: next to nothing. */
export function borrowedOf(state: RoomState): Borrowed | null {
  const shares = state.channels.filter(({ values }) => values.length > 0).map(borrowedShare);
  if (shares.length === 0) return null;
  const share = mean(shares);
  const rooms = Math.max(...state.channels.map(({ lent }) => lent?.rooms ?? 0));
  return share < LEAST_SHARE ? null : { share: Math.round(1000 * share) / 1000, rooms };
}

/**
 * The weight of the prior in the level of the running current where the room's own strokes were made: what they left of its variance. 1
 * before they count, 0 where nothing is lent.
 */
function borrowedShare(channel: Channel): number {
  const prior: LentPrior | null = channel.lent?.measures[MEASURE_INDEX.runningAmps] ?? null;
  if (prior === null || channel.shapes[MEASURE_INDEX.runningAmps] !== null) return 0;
  const fit = channel.fits[MEASURE_INDEX.runningAmps];
  if (fit === null) return 1;
  const rows = channel.conditions.map((each) => regressors(each, channel.weather));
  const middle = [0, 1, 2].map((place) => mean(rows.map((row) => row[place])));
  return Math.min(1, quadraticForm(fit.covariance, middle) / quadraticForm(prior.covariance, middle));
}
