import { SortedWindow } from './sortedWindow.ts';

/**
 * As `rollingMedian` for windows of some dozens of values, of which there are at least one window's and none is NaN.
 *
 * Nothing is kept in order. With each step it is counted how many values of the window lie below the median and how
 * many equal it; only where it can be the median no more, about every other time, the window is looked through for
 * the next one. Half the time of a window kept in order.
 */
export function narrowRollingMedian(values: Float64Array, halfWindow: number): Float64Array {
  const n = values.length;
  const medians = new Float64Array(n);
  fillEdges(values, halfWindow, medians);
  let median = medianOfFirst(values, 2 * halfWindow + 1);
  let below = 0;
  let equal = 0;
  for (let i = 0; i <= 2 * halfWindow; i++) {
    if (values[i] < median) below++;
    else if (values[i] === median) equal++;
  }
  const last = n - 1 - halfWindow;
  for (let i = halfWindow; ; i++) {
    medians[i] = median;
    if (i === last) return medians;
    const first = i - halfWindow + 1;
    const end = i + halfWindow + 2;
    const gone = values[first - 1];
    const come = values[end - 1];
    if (gone < median) below--;
    else if (gone === median) equal--;
    if (come < median) below++;
    else if (come === median) equal++;
    if (below > halfWindow) {
      ({ value: median, times: equal } = nextBelow(values, first, end, median));
      below -= equal;
    } else if (below + equal <= halfWindow) {
      below += equal;
      ({ value: median, times: equal } = nextAbove(values, first, end, median));
    }
  }
}

/** The windows at both ends, which grow from half of one. */
function fillEdges(values: Float64Array, halfWindow: number, medians: Float64Array): void {
  const n = values.length;
  const [head, tail] = [new SortedWindow(2 * halfWindow), new SortedWindow(2 * halfWindow)];
  for (let i = 0; i < halfWindow; i++) {
    head.insert(values[i]);
    tail.insert(values[n - 1 - i]);
  }
  for (let i = 0; i < halfWindow; i++) {
    head.insert(values[i + halfWindow]);
    tail.insert(values[n - 1 - i - halfWindow]);
    medians[i] = head.median();
    medians[n - 1 - i] = tail.median();
  }
}

function medianOfFirst(values: Float64Array, count: number): number {
  return values.slice(0, count).sort()[count >> 1];
}

/** The greatest value below a limit, and how many there are of it. */
function nextBelow(values: Float64Array, from: number, end: number, limit: number) {
  let next = Number.NEGATIVE_INFINITY;
  let times = 0;
  for (let i = from; i < end; i++) {
    const value = values[i];
    if (value >= limit || value < next) continue;
    times = value > next ? 1 : times + 1;
    next = value;
  }
  return { value: next, times };
}

/** The smallest value above a limit, and how many there are of it. */
function nextAbove(values: Float64Array, from: number, end: number, limit: number) {
  let next = Number.POSITIVE_INFINITY;
  let times = 0;
  for (let i = from; i < end; i++) {
    const value = values[i];
    if (value <= limit || value > next) continue;
    times = value < next ? 1 : times + 1;
    next = value;
  }
  return { value: next, times };
}
