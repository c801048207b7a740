export interface NotTooOften<Said extends unknown[]> {
  readonly tell: (...said: Said) => void;
  /** What still waits is not told any more. */
  readonly stop: () => void;
}

/** Passes on at once, and all that comes within `apartMs` after that once more at its end, with what came last. */
export function notTooOften<Said extends unknown[]>(
  passOn: (...said: Said) => void,
  apartMs: number,
): NotTooOften<Said> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let waiting: Said | null = null;
  const tell = (...said: Said) => {
    if (timer !== undefined) {
      waiting = said;
      return;
    }
    timer = setTimeout(rested, apartMs);
    passOn(...said);
  };
  const rested = () => {
    timer = undefined;
    const said = waiting;
    waiting = null;
    if (said !== null) tell(...said);
  };
  return { tell, stop: () => clearTimeout(timer) };
}
