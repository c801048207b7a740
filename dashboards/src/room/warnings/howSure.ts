import type { Warning } from '../../api/types.ts';
import { plainCount } from '../../format.ts';
import { words } from '../../words.ts';

/** So many usual spreads from the normal are seen about never by chance. */
const VERY_SURE_SIGMAS = 6;
/** With fewer it is not the latest stroke alone that tells it. */
const QUITE_SURE_SIGMAS = 3;

/** How sure a warning is, in a sentence, by what its evidence holds. */
export function howSure({ evidence, kind }: Pick<Warning, 'evidence' | 'kind'>): string {
  const say = words.warnings.sure;
  const { sigmas, strokesWithSpikes, strokesLookedAt, stoodStill, shortStrokes } = evidence;
  if (stoodStill === true) return say.stoodStill;
  if (shortStrokes === 1) return say.oneStroke;
  if (typeof strokesWithSpikes === 'number' && typeof strokesLookedAt === 'number')
    return say.strokes(strokesWithSpikes, strokesLookedAt);
  if (typeof sigmas === 'number' && sigmas >= QUITE_SURE_SIGMAS)
    return sigmas >= VERY_SURE_SIGMAS ? say.very(plainCount(sigmas)) : say.quite(plainCount(sigmas));
  return say.byKind[kind] ?? say.severalStrokes;
}
