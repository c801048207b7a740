import { driveStroke } from './driveStroke.ts';
import type { WindingRoom } from './room.ts';
import { ordinaryStroke, type StrokeState } from './strokeState.ts';
import { emptyTape, STEP_S } from './tape.ts';

/** Mean current of each side under way, neither starting nor at the end, without weather, noise or chance. */
export function steadyAmps(room: WindingRoom, change: (state: StrokeState) => void): number[] {
  const tape = emptyTape(room.motors.length, 2.5 * room.durationS + 8);
  const sums = room.motors.map(() => ({ amps: 0, steps: 0 }));
  for (const direction of ['extend', 'retract'] as const) {
    const state = ordinaryStroke(room, direction);
    change(state);
    driveStroke(room, state, new Float64Array(room.motors.length).fill(20), tape);
    sums.forEach((sum, side) => {
      for (let step = Math.floor(0.5 / STEP_S); step < tape.steps; step++) {
        const position = tape.positions[side][step];
        if (position < 0.1 || position > 0.9) continue;
        sum.amps += tape.feedAmps[side][step];
        sum.steps++;
      }
    });
  }
  return sums.map(({ amps, steps }) => (steps === 0 ? 0 : amps / steps));
}

/** The size of a change that makes a side draw so much more, found by halving; the rise must grow with the size. */
export function sizeForRise(
  room: WindingRoom,
  side: number,
  rise: number,
  most: number,
  change: (state: StrokeState, size: number) => void,
): number {
  const before = steadyAmps(room, () => {})[side];
  let low = 0;
  let high = most;
  for (let round = 0; round < 9; round++) {
    const middle = (low + high) / 2;
    const after = steadyAmps(room, (state) => change(state, middle))[side];
    if (after / before - 1 < rise) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
