import { anySide, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { drawOnset, type FaultRecipe, lastingFault } from '../fault.ts';
import { sizeFor, steadyAmps } from '../sizing.ts';
import type { StrokeState } from '../strokeState.ts';

/** An adjuster has come loose: one side lifts off its shoes, and the other carries what it sheds. */
export const liftedSide: FaultRecipe = {
  name: 'lifted-side',
  needs: { sides: 2, pacings: ['pwm', 'pause'] },
  cure: 'adjusted',
  draw(room, random, strokes) {
    const harder = anySide(room, random);
    const shift = random.uniform(0.06, 0.12);
    const taken = random.uniform(0.7, 1);
    const change = (state: StrokeState, size: number) => {
      state.sides[1 - harder].coulomb *= 1 - size;
      state.sides[harder].coulomb *= 1 + size * taken;
    };
    const shareOf = ([first, second]: number[]) => [first, second][harder] / (first + second);
    const before = shareOf(steadyAmps(room, () => {}));
    const size = sizeFor(
      shift,
      0,
      0.9,
      (each) => shareOf(steadyAmps(room, (state) => change(state, each))) - before,
    );
    return lastingFault(
      'lifted-side',
      drawOnset(random, strokes),
      { kind: 'uneven-sides', alsoFits: ['rising-draw'], severity: shift, side: namedSide(room, harder) },
      (state) => change(state, size),
    );
  },
};
