import { rollingMedian } from '../../statistics/rollingMedian.ts';
import { HELD_PART, MOVING_PART } from '../rest/heldLevel.ts';
import { halfWindow, type SideSignal } from '../signal/sideSignal.ts';

/** A start may fall back towards what holds the motor for so long before the movement goes on, seconds: a load that is only just set in motion. A guess. */
const LONGEST_DIP_S = 0.8;
/** What falls back there for longer than this has come to its end: then the drive rings, and no movement follows. A guess, no source. */
const LONGEST_DROP_S = 0.06;
const QUICK_S = 0.1;
/** What lasts for less is no movement: the drive settles, or shakes. Seconds; a guess, no source. */
const SHORTEST_MOVEMENT_S = 1;
/** What is no further from the record's edge tells nothing: the record was cut there, and a drive lags behind its command. Seconds; a guess. */
const EDGE_S = 0.3;

/** From three quarters to half-way up in less than this, seconds: a sine that lasts for two seconds takes as long again: (asin 3/4 - asin 1/2) / pi. */
const AT_ONCE_S = 0.13;

/** Half-way up from what holds the motor to what it draws as it moves, and a quarter; amperes. */
interface Levels {
  readonly above: number;
  readonly low: number;
}

/**
 * The first and the last sample of what a motor moves that is held in place before and after: what lies half-way up to what it draws
 * as it moves, and on both sides of that as far as it stands clear of what holds it. So a movement that sets out and arrives slowly,
 * by a sine, lasts as long whether its record was cut close to it or wide: but for a twelfth of its time at either end, in which it
 * goes a sixtieth of its way: (asin 1/4) / pi, and (1 - cos asin 1/4) / 2. What the motor draws for less than a second apart from all
 * else, and once it has fallen, is its controller's settling. Null where nothing comes up to there for longer.
 * `smooth`: amperes, one value a sample of the signal.
 */
export function heldMovement(
  signal: Pick<SideSignal, 'timesS' | 'stepS' | 'amps'>,
  smooth: Float64Array,
  { heldAmps, movingAmps }: { readonly heldAmps: number; readonly movingAmps: number },
): { readonly first: number; readonly last: number } | null {
  const above = heldAmps + MOVING_PART * (movingAmps - heldAmps);
  const low = heldAmps + HELD_PART * (movingAmps - heldAmps);
  const movements = movementsIn(signal, smooth, { above, low }, LONGEST_DIP_S);
  if (movements.length === 0) return null;
  // What a drive falls to before it rings lasts for a tenth of a second, which the smoothed current does not always show.
  const quick = rollingMedian(signal.amps, halfWindow(signal, QUICK_S));
  const parts = movementsIn(signal, quick, { above, low: above }, LONGEST_DROP_S);
  const end = smooth.length - 1;
  const first = endFrom(signal, smooth, movements[0].from, -1, { above, low });
  const last = endFrom(signal, smooth, (parts.at(-1) ?? movements[movements.length - 1]).to, 1, {
    above,
    low,
  });
  const { timesS } = signal;
  return {
    first: timesS[first] - timesS[0] > EDGE_S ? first : 0,
    last: timesS[end] - timesS[last] > EDGE_S ? last : end,
  };
}

/**
 * Where a movement ends whose current last lies half-way up at `from`, in the direction of `step`. One that stops at once, from three
 * quarters up, ends there. One that arrives slowly goes on as long as it lies above the lower level and does not rise again: what
 * does so is the drive that rings.
 */
function endFrom(
  { timesS }: Pick<SideSignal, 'timesS'>,
  smooth: Float64Array,
  from: number,
  step: 1 | -1,
  { above, low }: Levels,
) {
  const quarter = above - low;
  for (let i = from; i >= 0 && i < smooth.length && Math.abs(timesS[i] - timesS[from]) < AT_ONCE_S; i -= step)
    if (smooth[i] > above + quarter) return from;
  let lowest = from;
  for (let i = from + step; i >= 0 && i < smooth.length && smooth[i] >= low; i += step) {
    if (smooth[i] > smooth[lowest] + quarter) break;
    if (smooth[i] <= smooth[lowest]) lowest = i;
  }
  return lowest;
}

/**
 * Stretches that rise above one level for a second and more, from there until they lie below a lower one for longer than `breakS`, or
 * to where they last lay above it.
 */
function movementsIn(
  { timesS, stepS }: Pick<SideSignal, 'timesS' | 'stepS'>,
  smooth: Float64Array,
  { above, low }: Levels,
  breakS: number,
): { from: number; to: number }[] {
  const movements: { from: number; to: number }[] = [];
  for (let from = 0; from < smooth.length; from++) {
    if (smooth[from] <= above) continue;
    let to = from;
    let kept = from;
    for (let i = from + 1; i < smooth.length && timesS[i] - timesS[kept] <= breakS + stepS; i++) {
      if (smooth[i] > low) kept = i;
      if (smooth[i] > above) to = i;
    }
    if (timesS[to] - timesS[from] >= SHORTEST_MOVEMENT_S) movements.push({ from, to });
    from = kept;
  }
  return movements;
}
