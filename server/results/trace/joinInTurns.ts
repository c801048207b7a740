/** Others' requests wait no longer than this for their turn. */
const LONGEST_MS = 8;

/** Puts a long text together piece by piece, with turns for others in between. */
export async function joinInTurns(pieces: Iterable<string>): Promise<string> {
  const done: string[] = [];
  let sinceMs = performance.now();
  for (const piece of pieces) {
    done.push(piece);
    if (performance.now() - sinceMs < LONGEST_MS) continue;
    await new Promise((resolve) => setImmediate(resolve));
    sinceMs = performance.now();
  }
  return done.join('');
}
