import type { Direction } from '../../../analysis/trace.ts';
import type { Condition } from './condition.ts';
import { driveStroke, type Tape } from './driveStroke.ts';
import type { LivedStroke } from './life.ts';
import type { CableRoom } from './room.ts';
import { soundCondition } from './soundCondition.ts';
import { STEP_S } from './step.ts';

/** A whole stroke on a mild day, on a level place and a full battery, to try a fault on. */
export function mildCondition(room: CableRoom, direction: Direction): Condition {
  const lived: LivedStroke = {
    atMs: 0,
    direction,
    from: direction === 'extend' ? 0 : 1,
    to: direction === 'extend' ? 1 : 0,
    reversed: true,
    stay: {
      tiltRadians: 0,
      pitchPart: 0,
      load: 1,
      openVolts: room.facts.nominalVolts * 1.06,
      rippleVolts: 0,
    },
    stayDays: 1,
    ambientC: 18,
    contactOhm: 0,
    rolling: room.sides.map(() => 1),
    grease: 1,
    rollerFlat: 0,
    zeroAmps: 0,
    holdS: 1,
    pauses: [],
    rateHz: room.logger.rateHz,
    averages: room.logger.averages,
    clockMs: 0,
    service: null,
  };
  return soundCondition(
    room,
    lived,
    room.sides.map(() => 0),
  );
}

/** What a side's current and time come to. */
export interface Measured {
  /** Mean between a fifth and four fifths of the travel. */
  readonly runAmps: readonly number[];
  readonly endsS: readonly number[];
  readonly volts: number;
  readonly tape: Tape;
}

/** Tries a change on a mild stroke. */
export function tryOut(
  room: CableRoom,
  direction: Direction,
  change: (condition: Condition) => void,
): Measured {
  const condition = mildCondition(room, direction);
  change(condition);
  return measureTape(driveStroke(room, direction, condition));
}

export function measureTape(tape: Tape): Measured {
  const reached = tape.positions.map((positions) => {
    const forward = positions[tape.steps - 1] >= positions[0];
    let step = 0;
    while (step < tape.steps - 1 && (forward ? positions[step] < 0.995 : positions[step] > 0.005)) step++;
    return step;
  });
  const runAmps = tape.amps.map((amps, at) => {
    let sum = 0;
    let count = 0;
    for (let step = 0; step < tape.steps; step++) {
      const position = tape.positions[at][step];
      if (position < 0.2 || position > 0.8) continue;
      sum += amps[step];
      count++;
    }
    return count > 0 ? sum / count : 0;
  });
  let volts = 0;
  const last = Math.max(...reached);
  for (let step = 0; step < last; step++) volts += tape.volts[step] / last;
  return { runAmps, endsS: reached.map((step) => step * STEP_S), volts, tape };
}

/** How far up from `low` a measure that grows with it reaches the wanted value; null: not by `high`. */
export function seek(
  low: number,
  high: number,
  wanted: number,
  measure: (value: number) => number,
): number | null {
  if (measure(high) < wanted) return null;
  let [below, above] = [low, high];
  for (let round = 0; round < 9; round++) {
    const middle = (below + above) / 2;
    if (measure(middle) < wanted) below = middle;
    else above = middle;
  }
  return above;
}
