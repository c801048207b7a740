import type { Direction } from '../../../analysis/trace.ts';
import type { SideCondition } from './condition.ts';
import { type Side, TRAVEL_BINS } from './room.ts';

/** The push that a side needs along the travel during one stroke, parts of its running push. */
export function loadTable(
  side: Side,
  direction: Direction,
  { rubbing, pull, bumps, lost }: SideCondition,
  stiffness: number,
): Float64Array {
  const load = new Float64Array(TRAVEL_BINS);
  const rubs = side.rubbing[direction];
  const stands = side.standing[direction];
  const factor = rubbing * stiffness;
  for (let bin = 0; bin < TRAVEL_BINS; bin++) load[bin] = rubs[bin] * factor + stands[bin] + pull;
  for (const { from, to, left } of lost) {
    const end = Math.min(TRAVEL_BINS, Math.ceil(to * TRAVEL_BINS));
    for (let bin = Math.max(0, Math.floor(from * TRAVEL_BINS)); bin < end; bin++) load[bin] *= left;
  }
  for (const { position, halfWidth, part } of bumps) {
    const end = Math.min(TRAVEL_BINS, Math.ceil((position + halfWidth) * TRAVEL_BINS));
    for (let bin = Math.max(0, Math.floor((position - halfWidth) * TRAVEL_BINS)); bin < end; bin++) {
      const off = ((bin + 0.5) / TRAVEL_BINS - position) / halfWidth;
      if (off > -1 && off < 1) load[bin] += (part * (1 + Math.cos(Math.PI * off))) / 2;
    }
  }
  return load;
}
