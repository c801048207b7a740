import { driveStroke } from './driveStroke.ts';
import type { WindingRoom } from './room.ts';
import { ordinaryStroke, type StrokeState } from './strokeState.ts';
import { emptyTape, STEP_S, type Tape } from './tape.ts';

export type Change = (state: StrokeState) => void;

const ROUNDS = 8;
/** The motors have started by then. */
const STARTED_S = 0.6;

/** One extend of the room with a change, on level ground, at 20 °C, without chance. */
export function trial(room: WindingRoom, change: Change): Tape {
  const tape = emptyTape(room.motors.length, 2.5 * room.durationS + 12);
  const state = ordinaryStroke(room, 'extend');
  change(state);
  return driveStroke(room, state, new Float64Array(room.motors.length).fill(20), tape);
}

/**
 * Mean current of each side under way, where the room's clamps sit, neither starting nor at the end; infinite where the
 * motors cannot bring the room out.
 */
export function steadyAmps(room: WindingRoom, change: Change): number[] {
  const tape = trial(room, change);
  if (tape.endPosition.some((position) => position < 0.95))
    return room.motors.map(() => Number.POSITIVE_INFINITY);
  const source = room.logger.onMotorLead ? tape.motorAmps : tape.feedAmps;
  return source.map((amps, side) => {
    let sum = 0;
    let count = 0;
    for (let step = Math.floor(STARTED_S / STEP_S); step < tape.steps; step++) {
      const position = tape.positions[side][step];
      if (position < 0.08 || position > 0.92) continue;
      sum += amps[step];
      count++;
    }
    return count === 0 ? 0 : sum / count;
  });
}

/** The greatest current of a side between two positions. */
export function peakAmps(room: WindingRoom, side: number, from: number, to: number, change: Change): number {
  const tape = trial(room, change);
  let peak = 0;
  for (let step = Math.floor(STARTED_S / STEP_S); step < tape.steps; step++) {
    const position = tape.positions[side][step];
    if (position > from && position < to) peak = Math.max(peak, tape.motorAmps[side][step]);
  }
  return peak;
}

/** How much later a side reaches its end than the other, seconds. */
export function lagS(room: WindingRoom, side: number, change: Change): number {
  const tape = trial(room, change);
  const arrivals = tape.positions.map((positions) => {
    let step = 0;
    while (step < tape.steps && positions[step] < 0.99) step++;
    return step * STEP_S;
  });
  return arrivals[side] - arrivals[1 - side];
}

/** The size from `least` to `most` at which a growing measure reaches its goal, by halving. */
export function sizeFor(
  goal: number,
  least: number,
  most: number,
  measure: (size: number) => number,
): number {
  let low = least;
  let high = most;
  for (let round = 0; round < ROUNDS; round++) {
    const middle = (low + high) / 2;
    if (measure(middle) < goal) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The size of a change at which a side draws so much more under way, as a part of what it drew. */
export function sizeForRise(
  room: WindingRoom,
  side: number,
  rise: number,
  most: number,
  change: (state: StrokeState, size: number) => void,
): number {
  const before = steadyAmps(room, () => {})[side];
  return sizeFor(
    1 + rise,
    0,
    most,
    (size) => steadyAmps(room, (state) => change(state, size))[side] / before,
  );
}
