import type { NormalSide } from '../api/types.ts';

/** A stretch of the travel, 0 to 1, that lies outside the normal. */
export interface OutsideRange {
  readonly from: number;
  readonly to: number;
  readonly way: 'above' | 'below';
}

/** Where a profile leaves its normal; places that are known on one side only count as within. */
export function outsideRanges(profile: readonly (number | null)[], normal: NormalSide): OutsideRange[] {
  const ranges: { from: number; to: number; way: OutsideRange['way'] }[] = [];
  for (const [bin, amps] of profile.entries()) {
    const way = wayOf(amps, normal.lower[bin], normal.upper[bin]);
    if (way === null) continue;
    const [from, to] = [bin / profile.length, (bin + 1) / profile.length];
    const last = ranges[ranges.length - 1];
    if (last !== undefined && last.way === way && last.to === from) last.to = to;
    else ranges.push({ from, to, way });
  }
  return ranges;
}

function wayOf(
  amps: number | null,
  lower: number | null | undefined,
  upper: number | null | undefined,
): OutsideRange['way'] | null {
  if (amps === null || typeof lower !== 'number' || typeof upper !== 'number') return null;
  return amps > upper ? 'above' : amps < lower ? 'below' : null;
}
