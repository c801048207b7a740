import type { DoneAnalysis, MeasureName } from '../../measures.ts';

/** A range that ends so many times above the running current holds all of that: a guess, no source. */
const CLEAR_OF_RUNNING = 1.6;

/** What is read off the start and the stall, or summed up with them. */
export const READ_OFF_PEAKS: ReadonlySet<MeasureName> = new Set([
  'inrushAmps',
  'endStopAmps',
  'chargeAs',
  'energyJ',
  'turnsAs',
]);

/**
 * Whether a side's record is cut off at its start and its stall alone, as by a sensor whose range suits the running current:
 * that, and where and when it was drawn, is as good as ever, and nothing of `READ_OFF_PEAKS` is.
 */
export function cutsPeaksAlone(
  { doubts, sides }: Pick<DoneAnalysis, 'doubts' | 'sides'>,
  side: string,
): boolean {
  const measured = sides[side];
  if (measured?.held === undefined) return false;
  const isCut = (doubts ?? []).some((doubt) => doubt.side === side && doubt.doubt === 'clipped');
  const level = measured.held.amps - (measured.offsetAmps ?? 0);
  return isCut && level >= CLEAR_OF_RUNNING * measured.runningAmpsP90;
}
