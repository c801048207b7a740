/** How many of the latest strokes are kept. */
const KEPT = 6;

/** Adds the newest value to the latest ones, oldest first, and drops what is older than these. */
export function keepLatest<Value>(values: Value[], value: Value): void {
  values.push(value);
  if (values.length > KEPT) values.shift();
}
