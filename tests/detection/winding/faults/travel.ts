import { drawOnset, type FaultRecipe, lastingFault } from '../fault.ts';

const KIND = 'short-travel';

/** Something has fallen behind the room: it cannot come home all the way. */
export const boxBehind: FaultRecipe = {
  name: 'box-behind',
  needs: { endings: ['hand', 'current-limit'] },
  draw(_, random, strokes) {
    const short = random.uniform(0.08, 0.25);
    return lastingFault(
      'box-behind',
      drawOnset(random, strokes),
      { kind: KIND, severity: short },
      (state) => {
        if (state.direction === 'retract') state.block = short;
      },
    );
  },
};

/** A floor edge that the room runs up against before it is out. */
export const raisedFloor: FaultRecipe = {
  name: 'raised-floor',
  needs: { endings: ['hand', 'current-limit'] },
  draw(_, random, strokes) {
    const short = random.uniform(0.08, 0.3);
    return lastingFault(
      'raised-floor',
      drawOnset(random, strokes),
      { kind: KIND, severity: short },
      (state) => {
        if (state.direction === 'extend') state.block = 1 - short;
      },
    );
  },
};

/** Whoever holds the switch lets go too early every time. */
export const hastyHand: FaultRecipe = {
  name: 'hasty-hand',
  needs: { endings: ['hand'] },
  draw(_, random, strokes) {
    const short = random.uniform(0.1, 0.3);
    return lastingFault(
      'hasty-hand',
      drawOnset(random, strokes),
      { kind: KIND, severity: short },
      (state, _index, chance) => {
        if (state.direction === 'extend') state.stopAtPart = 1 - short + chance.uniform(-0.02, 0.02);
      },
    );
  },
};

/** The switches that end the travel have moved, or their count is lost. */
export const movedLimit: FaultRecipe = {
  name: 'moved-limit',
  needs: { endings: ['limit-switch'] },
  cure: 'adjusted',
  draw(_, random, strokes) {
    const short = random.uniform(0.08, 0.22);
    const where = random.pick(['extend', 'retract'] as const);
    return lastingFault(
      'moved-limit',
      drawOnset(random, strokes),
      { kind: KIND, severity: short },
      (state) => {
        if (state.direction === where) state.limitSwitchPart = 1 - short;
      },
    );
  },
};

/** The room stands and does not move whichever way the switch is pressed, until somebody has freed it. */
export const jammed: FaultRecipe = {
  name: 'jammed',
  needs: { endings: ['hand', 'current-limit'] },
  draw(_, random, strokes) {
    const onset = drawOnset(random, strokes);
    const tries = random.integer(5, 9);
    const fault = lastingFault(
      'jammed',
      onset,
      { kind: KIND, alsoFits: ['rising-draw', 'stall-spike'], severity: 1 },
      (state, _index, chance) => {
        state.block = state.startPosition;
        state.pauseAtPart = null;
        state.stopAtPart = null;
        state.releaseS = chance.uniform(0.3, 2.5);
      },
    );
    return {
      ...fault,
      untilStroke: onset + tries,
      services: [{ beforeStroke: onset + tries, kind: 'other', side: null }],
    };
  },
};
