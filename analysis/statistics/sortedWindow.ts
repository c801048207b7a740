/** A small multiset of numbers kept in order by insertion: the moving window under medians. NaN is ignored. */
export class SortedWindow {
  private readonly sorted: Float64Array;
  private count = 0;

  constructor(capacity: number) {
    this.sorted = new Float64Array(capacity + 1);
  }

  insert(value: number): void {
    if (Number.isNaN(value)) return;
    const place = this.placeOf(value);
    this.sorted.copyWithin(place + 1, place, this.count++);
    this.sorted[place] = value;
  }

  /** Takes out one occurrence; the value must be in. */
  remove(value: number): void {
    if (Number.isNaN(value)) return;
    const place = this.placeOf(value);
    this.sorted.copyWithin(place, place + 1, this.count--);
  }

  median(): number {
    if (this.count === 0) return Number.NaN;
    const half = this.count >> 1;
    const upper = this.sorted[half];
    return this.count % 2 === 1 ? upper : this.sorted[half - 1] + (upper - this.sorted[half - 1]) / 2;
  }

  /** Index of the first value that is not below `value`. */
  private placeOf(value: number): number {
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.sorted[middle] < value) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
