/** So long at first: half a minute at 125 samples a second. */
const FIRST_LENGTH = 4096;
/** What is longer is not kept: few records are, and one of a day would stay in the memory for good. */
const LONGEST_KEPT = 65_536;

/**
 * An array that is used again with each call: for what one function works out and is done with before anybody calls it again.
 * A new one of the length of a stroke takes as long as three passes over it, and the collection of garbage besides.
 */
export class ReusedArray {
  private held = new Float64Array(FIRST_LENGTH);

  /** What it holds is left over from before. */
  atLeast(length: number): Float64Array {
    if (length <= this.held.length) return this.held;
    if (length > LONGEST_KEPT) return new Float64Array(length);
    this.held = new Float64Array(Math.min(LONGEST_KEPT, 2 * length));
    return this.held;
  }

  /** As `atLeast`, no longer than asked for. */
  ofLength(length: number): Float64Array {
    return this.atLeast(length).subarray(0, length);
  }

  copyOf(values: Float64Array): Float64Array {
    const copy = this.ofLength(values.length);
    copy.set(values);
    return copy;
  }
}
