/** One peak; places and widths in samples, heights in the unit of the values. */
export interface Peak {
  /** Index from 0; of a flat top, its middle, rounded down. */
  readonly index: number;
  readonly height: number;
  /** Height above the higher of the lowest points on either side, before higher ground. */
  readonly prominence: number;
  /** Where the curve crosses, left and right, the level that is `levelShare` of the prominence down. */
  readonly left: number;
  readonly right: number;
  readonly width: number;
}

/** Which peaks count: heights in the unit of the values, widths and distances in samples. */
export interface PeakOptions {
  readonly minimumHeight?: number;
  readonly minimumProminence?: number;
  readonly minimumWidth?: number;
  /** The higher of two peaks nearer than this many samples stays. */
  readonly minimumDistance?: number;
  /** At which part of the prominence, from the top, the width is taken; one half unless told. */
  readonly levelShare?: number;
}

/**
 * Local maxima with their prominence and width, in order. Ends are no peaks.
 *
 * `values`: evenly spaced, no gaps (NaN is never a peak and ends no slope). Fewer than three answer none.
 *
 * Source: prominence as topographers define it; flat tops, widths and filters as in scipy.signal.find_peaks,
 * P. Virtanen and others (2020), SciPy 1.0.
 */
export function peaks(values: ArrayLike<number>, options: PeakOptions = {}): Peak[] {
  const { minimumHeight = -Infinity, minimumProminence = 0, minimumWidth = 0, minimumDistance = 1 } = options;
  const high = localMaxima(values).filter((index) => values[index] >= minimumHeight);
  return keepApart(values, high, minimumDistance)
    .map((index) => describePeak(values, index, options.levelShare ?? 0.5))
    .filter((peak) => peak.prominence >= minimumProminence && peak.width >= minimumWidth);
}

function localMaxima(values: ArrayLike<number>): number[] {
  const found: number[] = [];
  for (let i = 1; i < values.length - 1; i++) {
    if (!(values[i - 1] < values[i])) continue;
    let end = i;
    while (end < values.length - 1 && values[end + 1] === values[i]) end++;
    if (end < values.length - 1 && values[end + 1] < values[i]) found.push((i + end) >> 1);
    i = end;
  }
  return found;
}

/** Goes from the highest peak down (the later of equals first) and drops the nearer ones. */
function keepApart(values: ArrayLike<number>, found: number[], distance: number): number[] {
  if (distance <= 1) return found;
  const kept: number[] = [];
  const byHeight = [...found].sort((a, b) => values[b] - values[a] || b - a);
  for (const index of byHeight) {
    if (kept.every((other) => Math.abs(other - index) >= distance)) kept.push(index);
  }
  return kept.sort((a, b) => a - b);
}

function describePeak(values: ArrayLike<number>, index: number, levelShare: number): Peak {
  const height = values[index];
  const leftBase = lowestTowards(values, index, -1);
  const rightBase = lowestTowards(values, index, 1);
  const prominence = height - Math.max(values[leftBase], values[rightBase]);
  const level = height - prominence * levelShare;
  const left = crossing(values, index, leftBase, level, -1);
  const right = crossing(values, index, rightBase, level, 1);
  return { index, height, prominence, left, right, width: right - left };
}

function lowestTowards(values: ArrayLike<number>, index: number, step: 1 | -1): number {
  let lowest = index;
  for (let i = index; i >= 0 && i < values.length && !(values[i] > values[index]); i += step) {
    if (values[i] < values[lowest]) lowest = i;
  }
  return lowest;
}

function crossing(
  values: ArrayLike<number>,
  index: number,
  base: number,
  level: number,
  step: 1 | -1,
): number {
  let i = index;
  while (i !== base && level < values[i]) i += step;
  if (!(values[i] < level)) return i;
  return i - (step * (level - values[i])) / (values[i - step] - values[i]);
}
