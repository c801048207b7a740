/**
 * Indices (rising) of the first smallest and first largest value of each of `buckets` equal buckets: thinning that
 * never hides a peak.
 *
 * `values`: in order; NaN counts as missing. A bucket without values gives no index, one whose smallest is its
 * largest gives one. RangeError unless there is a bucket.
 *
 * Source: the per-pixel minimum and maximum of U. Jugel and others (2014), M4: a visualization-oriented time series
 * data aggregation.
 */
export function downsample(values: ArrayLike<number>, buckets: number): number[] {
  if (!(Number.isInteger(buckets) && buckets > 0)) throw new RangeError(`1 bucket or more, not ${buckets}`);
  const kept: number[] = [];
  for (let b = 0; b < buckets; b++) {
    const end = Math.floor(((b + 1) * values.length) / buckets);
    let smallest = -1;
    let largest = -1;
    for (let i = Math.floor((b * values.length) / buckets); i < end; i++) {
      if (Number.isNaN(values[i])) continue;
      if (smallest < 0 || values[i] < values[smallest]) smallest = i;
      if (largest < 0 || values[i] > values[largest]) largest = i;
    }
    if (smallest < 0) continue;
    kept.push(Math.min(smallest, largest));
    if (smallest !== largest) kept.push(Math.max(smallest, largest));
  }
  return kept;
}

/**
 * Indices (rising) of `count` points that keep the look of a curve: the first, the last, and from each bucket
 * between the point that makes the largest triangle with the one kept before and the mean of the next bucket.
 *
 * `x`, `y`: as many of each, x rising, no gaps. All where there are no more than `count`. RangeError for a `count`
 * below 3.
 *
 * Source: S. Steinarsson (2013), Downsampling Time Series for Visual Representation, section 4.2.
 */
export function largestTriangles(x: ArrayLike<number>, y: ArrayLike<number>, count: number): number[] {
  if (!(Number.isInteger(count) && count >= 3)) throw new RangeError(`3 points or more, not ${count}`);
  const n = y.length;
  if (x.length !== n) throw new RangeError(`${x.length} x but ${n} y`);
  if (n <= count) return Array.from({ length: n }, (_, i) => i);
  const width = (n - 2) / (count - 2);
  const start = (bucket: number) => Math.floor(bucket * width) + 1;
  const kept = [0];
  for (let bucket = 0; bucket < count - 2; bucket++) {
    const before = kept[bucket];
    const [meanX, meanY] = meanOf(x, y, start(bucket + 1), Math.min(start(bucket + 2), n));
    let best = start(bucket);
    let largest = -1;
    for (let i = start(bucket); i < start(bucket + 1); i++) {
      const area = Math.abs(
        (x[before] - meanX) * (y[i] - y[before]) - (x[before] - x[i]) * (meanY - y[before]),
      );
      if (area > largest) {
        largest = area;
        best = i;
      }
    }
    kept.push(best);
  }
  return [...kept, n - 1];
}

function meanOf(x: ArrayLike<number>, y: ArrayLike<number>, from: number, to: number): [number, number] {
  let sumX = 0;
  let sumY = 0;
  for (let i = from; i < to; i++) {
    sumX += x[i];
    sumY += y[i];
  }
  return [sumX / (to - from), sumY / (to - from)];
}
