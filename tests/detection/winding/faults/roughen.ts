import type { StrokeState } from '../strokeState.ts';

/** More friction on one side's guides, or on all: less (negative) where they were lubricated. */
export function roughen(state: StrokeState, side: number | null, size: number): void {
  state.sides.forEach((own, index) => {
    if (side !== null && index !== side) return;
    own.coulomb *= 1 + size;
    own.wiper *= 1 + size / 2;
  });
}
