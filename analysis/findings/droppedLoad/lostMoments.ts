import { isReady } from '../../baseline/channel.ts';
import { channelOf } from '../../roomState.ts';
import type { FindingContext } from '../finding.ts';

/** Of its running current a side draws less than this at such a moment, and there are so many of them in a stroke. */
const LOST_PART = 0.5;
const FEWEST_MOMENTS = 2;
/**
 * No tooth slips by in less, seconds: a controller that lets a side wait may switch it off for so short; and what is shorter
 * than so many samples reads as long as they are. Guesses, no source.
 */
const SHORTEST_S = 0.15;
const READ_SAMPLES = 1.5;
/**
 * A controller that keeps the sides in step may let the one ahead wait as often on every stroke: so many times as many are
 * another matter. What is usual is a moving mean over about four strokes, while a room learns. Guesses, no source.
 */
const TIMES_USUAL = 2;
const USUAL_PART = 0.25;
/** Where another side dips as well it is the supply, or the switch: parts of the travel. */
const SAME_PLACE = 0.03;

/**
 * How many times on this stroke one side lost its load for a moment, at places of its own: a gear that does not mesh now and
 * then, or a wire that lets go; 0: not, or once, or as often as it did while the room learnt. A tooth that catches after it
 * slipped is told by its peaks.
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
