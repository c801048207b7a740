/** After so many strokes that nothing speaks against, a record is to be trusted again. */
const CLEAR_STROKES = 4;
/** What comes back within so many strokes was never gone, and is believed to be only after twice as many as before. Guesses. */
const COMES_BACK = 40;
const MOST_RETURNS = 3;

/** How what is said of one record has come and gone. */
export interface DoubtMemory {
  /** Strokes in a row that nothing spoke against. */
  quiet: number;
  /** Strokes since it was cleared last; null: it has not been. */
  sinceCleared: number | null;
  /** How often it came back soon. */
  returns: number;
}

export function beginDoubtMemory(): DoubtMemory {
  return { quiet: 0, sinceCleared: null, returns: 0 };
}

/** Takes one more stroke in, and whether anything `spoke` against its record. */
export function noteDoubt(memory: DoubtMemory, spoke: boolean): void {
  memory.quiet = spoke ? 0 : memory.quiet + 1;
  if (memory.sinceCleared !== null) memory.sinceCleared++;
}

/** What was said is said anew: whether that is soon is remembered. */
export function doubtOpens(memory: DoubtMemory): void {
  const isSoon = memory.sinceCleared !== null && memory.sinceCleared < COMES_BACK;
  memory.returns = isSoon ? Math.min(MOST_RETURNS, memory.returns + 1) : 0;
}

/** Whether what is said is over; it is remembered as cleared then. */
export function doubtIsOver(memory: DoubtMemory): boolean {
  if (memory.quiet < CLEAR_STROKES * 2 ** memory.returns) return false;
  memory.sinceCleared = 0;
  return true;
}
