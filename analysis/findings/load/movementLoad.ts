import type { Residual } from '../../baseline/judge.ts';
import type { FindingContext } from '../finding.ts';
import { isWhole } from '../shortTravel/movementParts.ts';
import type { PartsMade } from './loadMemory.ts';

/**
 * What each side drew over a whole movement that was made in parts, answered with its last part: the mean over the
 * parts, weighed by their length. A part alone is not compared with what a whole way takes, but all together are.
 * `before`: the parts so far. The answer's `made` is what to remember of the parts; its `whole` is null while the
 * movement is not whole, or where nobody knows what it is made of.
 */
export function movementLoad(
  context: FindingContext,
  before: PartsMade | null,
): { made: PartsMade | null; whole: FindingContext['residual'] | null } {
  const { state, event, direction } = context;
  const here = partMade(context);
  if (here === null) return { made: null, whole: null };
  const goesOn =
    before !== null &&
    before.direction === direction &&
    !state.travel.followsUnread &&
    event.atMs - before.atMs === state.stay.restedMs;
  const made = goesOn ? joined(before, here) : here;
  if (made.length > 1 && !isWhole(made.length)) return { made: here, whole: null };
  if (!goesOn || !isWhole(made.length)) return { made, whole: null };
  const whole: FindingContext['residual'] = (side, measure) => {
    const judged = context.residual(side, measure);
    const rise = made.rises[side];
    return judged === null || rise === undefined ? null : moved(judged, rise / made.length - judged.rise);
  };
  return { made: null, whole };
}

function partMade({ state, event, direction, residual }: FindingContext): PartsMade | null {
  const { sides } = state.room;
  const times = sides.map((side) => residual(side, 'durationS')).filter((time) => time !== null);
  if (times.length === 0) return null;
  const length = Math.exp(Math.max(...times.map(({ rise }) => rise)));
  const rises = sides.flatMap((side) => {
    const running = residual(side, 'runningAmps');
    return running === null ? [] : [[side, length * running.rise]];
  });
  return { direction, atMs: event.atMs, length, rises: Object.fromEntries(rises) };
}

/**
 * How far the mean of the parts may lie off a movement made in one, standard deviation, natural logarithm: a guess, no
 * source.
 */
const OF_PARTS = 0.03;

/** Both together. Only sides that every part tells of are kept. */
function joined(before: PartsMade, here: PartsMade): PartsMade {
  const known = Object.keys(here.rises).filter((side) => before.rises[side] !== undefined);
  const rises = known.map((side) => [side, before.rises[side] + here.rises[side]]);
  return { ...here, length: before.length + here.length, rises: Object.fromEntries(rises) };
}

function moved(judged: Residual, by: number): Residual {
  return { ...judged, rise: judged.rise + by, zero: Math.hypot(judged.zero, OF_PARTS) };
}
