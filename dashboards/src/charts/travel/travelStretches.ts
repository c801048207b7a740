import type { SideTravel } from '../../api/types.ts';
import type { Stretch } from '../drawn/lanes.ts';

/** The end stop has no extent along the travel: it is shown as a block beside its end. */
export const BESIDE = 0.025;

/** One side's phases by place. */
export function stretches({ inrushEnd, endStop, pauses }: SideTravel): Stretch[] {
  const outward = inrushEnd < 0.5;
  const sorted = (from: number, to: number, phase: Stretch['phase']): Stretch => ({
    from: Math.min(from, to),
    to: Math.max(from, to),
    phase,
  });
  const [begin, end, beyond] = outward ? [0, 1, 1 + BESIDE] : [1, 0, -BESIDE];
  return [
    sorted(begin, inrushEnd, 'inrush'),
    sorted(inrushEnd, end, 'running'),
    ...(endStop === null ? [] : [sorted(end, beyond, 'endStop')]),
    ...pauses.map((place) => sorted(place - 0.004, place + 0.004, 'pause')),
  ];
}
