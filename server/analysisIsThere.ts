import { existsSync } from 'node:fs';

/** While the analysis is being written: everything else runs without it. Goes when it is there. */
export const analysisIsThere = existsSync(new URL('../analysis/room/fold.ts', import.meta.url));
export const comparisonIsThere = existsSync(new URL('../analysis/compare/compareSpans.ts', import.meta.url));
