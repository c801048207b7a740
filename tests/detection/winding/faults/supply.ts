import { drawOnset, type FaultRecipe, lastingFault } from '../fault.ts';
import type { WindingRoom } from '../room.ts';
import { sizeFor, trial } from '../sizing.ts';
import type { StrokeState } from '../strokeState.ts';
import { STEP_S } from '../tape.ts';

/** The mean supply while the room runs. */
function runningVolts(room: WindingRoom, change: (state: StrokeState) => void): number {
  const tape = trial(room, change);
  let sum = 0;
  let count = 0;
  for (let step = Math.floor(0.6 / STEP_S); step < tape.steps; step++) {
    if (tape.positions[0][step] > 0.95) break;
    sum += tape.volts[step];
    count++;
  }
  return sum / Math.max(1, count);
}

/** A battery at the end of its life, and nothing that charges it: it sags under the motors. */
export const tiredBattery: FaultRecipe = {
  name: 'tired-battery',
  needs: { recordsSupply: true },
  draw(room, random, strokes) {
    const goal = random.uniform(9.2, 10.2);
    const restVolts = random.uniform(11.8, 12.2);
    const change = (state: StrokeState, ohms: number) => {
      state.supply = {
        ...state.supply,
        sourceVolts: restVolts,
        sourceOhms: ohms,
        sourceLimitAmps: Number.POSITIVE_INFINITY,
      };
    };
    const ohms = sizeFor(
      -goal,
      0,
      5 / room.runningAmps,
      (size) => -runningVolts(room, (state) => change(state, size)),
    );
    return lastingFault(
      'tired-battery',
      drawOnset(random, strokes),
      { kind: 'weak-supply', severity: 12 - goal },
      (state, _, chance) => change(state, ohms * chance.uniform(0.9, 1.1)),
    );
  },
};

/** A corroded lug in the feed of the controller, before the place where the supply is measured. */
export const corrodedFeed: FaultRecipe = {
  name: 'corroded-feed',
  needs: { recordsSupply: true },
  draw(room, random, strokes) {
    const goal = random.uniform(8.6, 9.5);
    const ohms = sizeFor(
      -goal,
      0,
      5 / room.runningAmps,
      (size) =>
        -runningVolts(room, (state) => {
          state.supply = { ...state.supply, cableOhms: size };
        }),
    );
    return lastingFault(
      'corroded-feed',
      drawOnset(random, strokes),
      { kind: 'weak-supply', severity: 12 - goal },
      (state, _, chance) => {
        state.supply = { ...state.supply, cableOhms: ohms * chance.uniform(0.9, 1.1) };
      },
    );
  },
};
