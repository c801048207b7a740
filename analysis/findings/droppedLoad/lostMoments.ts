import { isReady } from '../../baseline/channel.ts';
import { channelOf } from '../../roomState.ts';
import type { FindingContext } from '../finding.ts';

/**
 * At a lost moment a side draws less than this part of its running current; a stroke has at least this many of them.
 */
const LOST_PART = 0.5;
const FEWEST_MOMENTS = 2;
/**
 * A tooth takes longer than this to slip by, seconds, while a controller that makes a side wait may switch it off for
 * less. A dip reads up to this many samples longer than it is. Guesses, no source.
 */
const SHORTEST_S = 0.15;
const READ_SAMPLES = 1.5;
/**
 * A controller that keeps the sides in step may make the one ahead wait on every stroke. More than this many times the
 * usual number is something else. The usual number is a moving mean over about four strokes while the room learns.
 * Guesses, no source.
 */
const TIMES_USUAL = 2;
const USUAL_PART = 0.25;
/** If another side dips within this part of the travel, it is the supply or the switch. */
const SAME_PLACE = 0.03;

/**
 * How many times on this stroke one side lost its load for a moment, at places of its own: a gear that does not mesh
 * now and then, or a wire that lets go. 0 where it did so at most once, or about as often as while the room learnt. A
 * side with spikes has none either: a tooth that catches after it slipped is told by its peaks.
 */
export function lostMoments(context: FindingContext, side: string): number {
  const { state, direction } = context;
  const moments = momentsOf(context, side);
  const load = state.load.sides[side];
  const channel = channelOf(state, side, direction);
  if (channel === undefined || !isReady(channel)) {
    load.waits += USUAL_PART * (moments - load.waits);
    return 0;
  }
  return moments > TIMES_USUAL * load.waits ? moments : 0;
}

function momentsOf({ state, analysis, doubtful }: FindingContext, side: string): number {
  const measured = analysis.sides[side];
  const others = Object.keys(analysis.sides).filter((name) => name !== side);
  if (measured === undefined || others.length === 0 || state.room.sides.some((name) => doubtful.has(name)))
    return 0;
  if (measured.spikes.length > 0) return 0;
  const elsewhere = others.flatMap((name) => analysis.sides[name].dips);
  const shortestS = SHORTEST_S + (measured.rateHz === undefined ? 0 : READ_SAMPLES / measured.rateHz);
  const own = measured.dips.filter(
    ({ amps, position, widthS }) =>
      widthS >= shortestS &&
      amps < LOST_PART * measured.runningAmps &&
      !elsewhere.some((dip) => Math.abs(dip.position - position) < SAME_PLACE),
  );
  return own.length < FEWEST_MOMENTS ? 0 : own.length;
}
