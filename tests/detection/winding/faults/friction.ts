import { anySide, type LabelParts, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { drawOnset, type FaultRecipe, lastingFault } from '../fault.ts';
import { sizeForRise } from '../sizing.ts';
import { roughen } from './roughen.ts';

/** All shoes have lost their lubricant. */
export const dryRails: FaultRecipe = {
  name: 'dry-rails',
  needs: {},
  cure: 'lubricated',
  draw(room, random, strokes) {
    const rise = random.uniform(0.15, 0.4);
    const size = sizeForRise(room, 0, rise, 3, (state, each) => roughen(state, null, each));
    const label: LabelParts = { kind: 'rising-draw', severity: rise, side: namedSide(room, null) };
    return lastingFault('dry-rails', drawOnset(random, strokes), label, (state) =>
      roughen(state, null, size),
    );
  },
};

/** A roller of one side has seized and slides. */
export const seizedRoller: FaultRecipe = {
  name: 'seized-roller',
  needs: { sides: 2, pacings: ['pwm', 'pause'] },
  cure: 'block-replaced',
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const rise = random.uniform(0.15, 0.45);
    const size = sizeForRise(room, side, rise, 3, (state, each) => roughen(state, side, each));
    return lastingFault(
      'seized-roller',
      drawOnset(random, strokes),
      { kind: 'rising-draw', alsoFits: ['uneven-sides'], severity: rise, side: namedSide(room, side) },
      (state) => roughen(state, side, size),
    );
  },
};

/** A dry shoe: much more friction at creeping speed, so it starts hard, and some more under way. */
export const dryShoe: FaultRecipe = {
  name: 'dry-shoe',
  needs: { sides: 2, pacings: ['pwm', 'pause'] },
  cure: 'lubricated',
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const rise = random.uniform(0.15, 0.3);
    const size = sizeForRise(room, side, rise, 3, (state, each) => roughen(state, side, each));
    return lastingFault(
      'dry-shoe',
      drawOnset(random, strokes),
      { kind: 'rising-draw', alsoFits: ['uneven-sides'], severity: rise, side: namedSide(room, side) },
      (state, _, chance) => {
        roughen(state, side, size * chance.uniform(0.85, 1.15));
        state.sides[side].stribeck *= 2.5;
      },
    );
  },
};

/** Between found sizes, in a straight line. */
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

/** Wear that goes on: the current grows by the same part with every stroke. */
export const drift: FaultRecipe = {
  name: 'drift',
  needs: {},
  draw(room, random, strokes) {
    const growth = random.uniform(0.003, 0.006);
    const onset = drawOnset(random, strokes, Math.ceil(Math.log(1.3) / growth));
    const isOneSided = room.motors.length === 2 && room.controller.pacing !== 'none' && random.chance(0.5);
    const side = isOneSided ? anySide(room, random) : null;
    const sizes = [0.15, 0.4, 0.8].map((rise) => ({
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
        side: namedSide(room, side),
      },
      // A room that draws half as much again is not driven any further: from there on it stays.
      (state, index) =>
        roughen(state, side, sizeAt(sizes, Math.min(0.6, Math.exp(growth * (index - onset + 1)) - 1))),
    );
  },
};

/** Lubricated, after which the current falls; but the lubricant does not stay, and it climbs back in a few weeks. */
export const rebound: FaultRecipe = {
  name: 'rebound',
  needs: {},
  draw(room, random, strokes) {
    const onset = drawOnset(random, strokes, 50);
    const before = random.uniform(0, 0.0006);
    const drop = random.uniform(0.12, 0.18);
    const growth = random.uniform(0.005, 0.011);
    const sizePerRise = sizeForRise(room, 0, 0.2, 2, (state, each) => roughen(state, null, each)) / 0.2;
    const fault = lastingFault(
      'rebound',
      onset,
      { kind: 'draw-rebound', alsoFits: ['rising-draw'], severity: growth, side: namedSide(room, null) },
      (state, index) => {
        const rise =
          index < onset ? before * index : Math.min(0.15, before * onset - drop + growth * (index - onset));
        roughen(state, null, rise * sizePerRise);
      },
    );
    return { ...fault, bearsFrom: 0, services: [{ beforeStroke: onset, kind: 'lubricated', side: null }] };
  },
};
