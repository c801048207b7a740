import { anySide, drawOnset, type FaultRecipe, lastingFault, sideName } from '../fault.ts';
import { sizeForRise } from '../sizing.ts';
import type { StrokeState } from '../strokeState.ts';

function roughen(state: StrokeState, side: number | null, size: number): void {
  state.sides.forEach((own, index) => {
    if (side !== null && index !== side) return;
    own.coulomb *= 1 + size;
    own.wiper *= 1 + size / 2;
  });
}

/** All shoes have lost their lubricant. */
export const dryRails: FaultRecipe = {
  name: 'dry-rails',
  needs: {},
  draw(room, random, strokes) {
    const rise = random.uniform(0.15, 0.4);
    const size = sizeForRise(room, 0, rise, 3, (state, each) => roughen(state, null, each));
    return lastingFault(
      'dry-rails',
      drawOnset(random, strokes),
      { kind: 'rising-draw', severity: rise, side: sideName(room, null) },
      (state) => roughen(state, null, size),
    );
  },
};

/** A roller of one side has seized. */
export const seizedRoller: FaultRecipe = {
  name: 'seized-roller',
  needs: { sides: 2, pacings: ['pwm', 'pause'] },
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const rise = random.uniform(0.18, 0.45);
    const size = sizeForRise(room, side, rise, 3, (state, each) => roughen(state, side, each));
    return lastingFault(
      'seized-roller',
      drawOnset(random, strokes),
      { kind: 'rising-draw', alsoFits: ['uneven-sides'], severity: rise, side: sideName(room, side) },
      (state) => roughen(state, side, size),
    );
  },
};

/** Wear that goes on: the current grows by the same part with every stroke. */
export const drift: FaultRecipe = {
  name: 'drift',
  needs: {},
  draw(room, random, strokes) {
    const growth = random.uniform(0.003, 0.006);
    const onset = drawOnset(random, strokes, Math.ceil(Math.log(1.3) / growth));
    const oneSide = room.motors.length === 2 && room.controller.pacing !== 'none' && random.chance(0.5);
    const side = oneSide ? anySide(room, random) : null;
    const sizes = [0.15, 0.3, 0.6, 1].map((rise) => ({
      rise,
      size: sizeForRise(room, side ?? 0, rise, 4, (state, each) => roughen(state, side, each)),
    }));
    return lastingFault(
      'drift',
      onset,
      {
        kind: 'rising-draw',
        alsoFits: side === null ? [] : ['uneven-sides'],
        severity: growth,
        side: sideName(room, side),
      },
      (state, index) => roughen(state, side, sizeAt(sizes, Math.exp(growth * (index - onset + 1)) - 1)),
    );
  },
};

/** Between the sizes that were found, in a straight line. */
function sizeAt(sizes: readonly { readonly rise: number; readonly size: number }[], rise: number): number {
  let last = { rise: 0, size: 0 };
  for (const next of sizes) {
    if (rise <= next.rise) {
      return last.size + ((next.size - last.size) * (rise - last.rise)) / (next.rise - last.rise);
    }
    last = next;
  }
  return (last.size * rise) / last.rise;
}
