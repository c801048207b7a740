/** Values further apart than this are moved by one call, which costs as much as moving so many in a loop. */
const FAR = 64;

/** A small multiset of numbers kept in order by insertion: the moving window under medians. NaN is ignored. */
export class SortedWindow {
  private readonly sorted: Float64Array;
  private count = 0;

  constructor(capacity: number) {
    this.sorted = new Float64Array(capacity + 1);
  }

  insert(value: number): void {
    if (Number.isNaN(value)) return;
    this.shift(this.count, this.placeOf(value), value);
    this.count++;
  }

  /** Takes out one occurrence; the value must be in. */
  remove(value: number): void {
    if (Number.isNaN(value)) return;
    const last = --this.count;
    this.shift(this.placeOf(value), last, this.sorted[last]);
  }

  /** Takes out one occurrence of `old`, which must be in, and puts `value` in: as both calls, moving less. */
  replace(old: number, value: number): void {
    if (Number.isNaN(old) || Number.isNaN(value)) {
      this.remove(old);
      this.insert(value);
      return;
    }
    const from = this.placeOf(old);
    const to = this.placeOf(value);
    this.shift(from, to > from ? to - 1 : to, value);
  }

  median(): number {
    if (this.count === 0) return Number.NaN;
    const half = this.count >> 1;
    const upper = this.sorted[half];
    return this.count % 2 === 1 ? upper : this.sorted[half - 1] + (upper - this.sorted[half - 1]) / 2;
  }

  /** Closes the hole at `from` by opening one at `to`, where `value` goes. */
  private shift(from: number, to: number, value: number): void {
    const { sorted } = this;
    if (from - to > FAR) sorted.copyWithin(to + 1, to, from);
    else if (to - from > FAR) sorted.copyWithin(from, from + 1, to + 1);
    else {
      for (; from > to; from--) sorted[from] = sorted[from - 1];
      for (; from < to; from++) sorted[from] = sorted[from + 1];
    }
    sorted[to] = value;
  }

  /** Index of the first value that is not below `value`. */
  private placeOf(value: number): number {
    const { sorted } = this;
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sorted[middle] < value) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
