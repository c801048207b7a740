import { select, sortStretch } from './select.ts';

/** Among fewer values it takes longer to find those near a rank than to select in all of them. */
const WORTH_NARROWING = 250;
/** So many values, spread over all, tell about where a rank lies; and so many of them either way, where it surely does. */
const SAMPLE = 32;
const REACH = 3;

const sample = new Float64Array(SAMPLE);
let held = new Float64Array(4096);

/**
 * The `k`-th smallest of `values[from..to]` and the next one after it, infinite where there is none. May reorder
 * `values`, which must hold no NaN.
 *
 * Of many values only those near the rank are gathered, in one pass without a branch that depends on them, and the rest
 * is counted: half the time of selecting among all. After R. W. Floyd, R. L. Rivest (1975), Expected time bounds for
 * selection.
 */
export function neighboursOfRank(
  values: Float64Array,
  k: number,
  from: number,
  to: number,
): { readonly at: number; readonly after: number } {
  if (to - from >= WORTH_NARROWING) {
    const place = gatherNear(values, k - from, from, to);
    if (place !== null) return neighboursIn(held, place.k, 0, place.last);
  }
  return neighboursIn(values, k, from, to);
}

function neighboursIn(values: Float64Array, k: number, from: number, to: number) {
  const at = select(values, k, from, to);
  let after = Number.POSITIVE_INFINITY;
  for (let i = k + 1; i <= to; i++) if (values[i] < after) after = values[i];
  return { at, after };
}

/** Puts what lies near the rank into `held`, and answers where the rank is there; null where it is not, nor the next one. */
function gatherNear(
  values: Float64Array,
  rank: number,
  from: number,
  to: number,
): { readonly k: number; readonly last: number } | null {
  const count = to - from + 1;
  if (held.length < count) held = new Float64Array(2 * count);
  for (let i = 0; i < SAMPLE; i++) sample[i] = values[from + Math.floor((i * count) / SAMPLE)];
  sortStretch(sample, 0, SAMPLE - 1);
  const about = (rank * SAMPLE) / count;
  const [lowest, highest] = [Math.floor(about - REACH), Math.ceil(about + REACH)];
  const low = lowest < 0 ? Number.NEGATIVE_INFINITY : sample[lowest];
  const high = highest < SAMPLE ? sample[highest] : Number.POSITIVE_INFINITY;
  const space = held;
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
