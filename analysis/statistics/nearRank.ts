import { ReusedArray } from './reusedArray.ts';
import { select, sortStretch } from './select.ts';

/** Among fewer values it takes longer to find those near a rank than to select in all of them. */
const WORTH_NARROWING = 120;
/** So many values, spread over all, tell about where a rank lies; and so many of them either way, where it surely does. */
const SAMPLE = 32;
const REACH = 3;

const sample = new Float64Array(SAMPLE);
/** What was gathered near the rank, and what was gathered once more from that. */
const held = [new ReusedArray(), new ReusedArray()];

/**
 * The `k`-th smallest of `values[from..to]` and the next one after it, infinite where there is none. May reorder
 * `values`, which must hold no NaN.
 *
 * Of many values only those near the rank are gathered, in one pass without a branch that depends on them, and the rest
 * is counted; what was gathered is narrowed once more: less than half the time of selecting among all. After R. W. Floyd, R. L. Rivest (1975), Expected time bounds for
 * selection.
 */
export function neighboursOfRank(
  values: Float64Array,
  k: number,
  from: number,
  to: number,
): { readonly at: number; readonly after: number } {
  for (let narrowed = 0; narrowed < held.length && to - from >= WORTH_NARROWING; narrowed++) {
    const space = held[narrowed].atLeast(to - from + 1);
    const near = gatherNear(values, k - from, from, to, space);
    if (near === null) break;
    values = space;
    k = near.k;
    from = 0;
    to = near.last;
  }
  return neighboursIn(values, k, from, to);
}

function neighboursIn(values: Float64Array, k: number, from: number, to: number) {
  const at = select(values, k, from, to);
  let after = Number.POSITIVE_INFINITY;
  for (let i = k + 1; i <= to; i++) if (values[i] < after) after = values[i];
  return { at, after };
}

/** Puts what lies near the rank into `space`, and answers where the rank is there; null where it is not, nor the next one. */
function gatherNear(
  values: Float64Array,
  rank: number,
  from: number,
  to: number,
  space: Float64Array,
): { readonly k: number; readonly last: number } | null {
  const count = to - from + 1;
  for (let i = 0; i < SAMPLE; i++) sample[i] = values[from + Math.floor((i * count) / SAMPLE)];
  sortStretch(sample, 0, SAMPLE - 1);
  const about = (rank * SAMPLE) / count;
  const [lowest, highest] = [Math.floor(about - REACH), Math.ceil(about + REACH)];
  const low = lowest < 0 ? Number.NEGATIVE_INFINITY : sample[lowest];
  const high = highest < SAMPLE ? sample[highest] : Number.POSITIVE_INFINITY;
  let below = 0;
  let near = 0;
  for (let i = from; i <= to; i++) {
    const value = values[i];
    const isLow = Number(value < low);
    space[near] = value;
    below += isLow;
    near += 1 - isLow - Number(value > high);
  }
  const k = rank - below;
  const isThere = k >= 0 && (k + 1 < near || (k < near && rank === count - 1));
  return isThere ? { k, last: near - 1 } : null;
}
