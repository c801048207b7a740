import type { FaultRecipe } from '../fault.ts';
import { drift, dryRails, seizedRoller } from './risingDraw.ts';

/** In the order in which rooms get them. */
export const FAULT_RECIPES: readonly FaultRecipe[] = [dryRails, seizedRoller, drift];
