import type { Condition, Reading } from '../condition.ts';
import { nameOf, type Occasion, planFault, type Recipe } from '../fault.ts';
import { tryOut } from '../mildStroke.ts';
import { STEP_S } from '../step.ts';

/** Rest, inrush and stall are all there to see. */
const WHOLE = { wholeRecord: true } as const;

function drawClampAt({ room, random }: Occasion): number {
  return random.integer(0, room.sides.length - 1);
}

function sensorFault(
  name: string,
  occasion: Occasion,
  at: number,
  severity: number,
  change: (reading: Reading, condition: Condition) => void,
  often = 1,
): ReturnType<Recipe['draw']> {
  const label = { kind: 'sensor-doubt', severity, side: nameOf(occasion.room, at) } as const;
  return planFault(name, occasion.onset, label, (condition, _index, _lived, own) => {
    if (own.chance(often)) change(condition.sides[at].reading, condition);
  });
}

/** A clamp of another size, or one that is set to another range: all that it reads changes alike. */
export const otherScale: Recipe = {
  name: 'other-scale',
  needs: () => ({ ...WHOLE, plainController: true, supply: true }),
  draw: (occasion) => {
    const gain = occasion.random.pick([0.5, 0.62, 0.7, 1.45, 1.7, 2]);
    return sensorFault('other-scale', occasion, drawClampAt(occasion), gain, (reading) => {
      reading.gain = gain;
    });
  },
};

/** A clamp that was magnetised by a jolt: it no longer reads nothing at rest. */
export const movedZero: Recipe = {
  name: 'moved-zero',
  needs: () => WHOLE,
  draw: (occasion) => {
    const { room, random } = occasion;
    const { runAmps } = room.sides[0];
    const amps =
      Math.max(1, random.uniform(0.25, 0.5) * runAmps) * (room.logger.signed && random.chance(0.5) ? -1 : 1);
    return sensorFault('moved-zero', occasion, drawClampAt(occasion), amps / runAmps, (reading) => {
      reading.zeroAmps += amps;
    });
  },
};

/** A broken screen or a loose plug. */
export const noisyWire: Recipe = {
  name: 'noisy-wire',
  needs: () => ({}),
  draw: (occasion) => {
    const { room, random } = occasion;
    const { runAmps } = room.sides[0];
    const noiseAmps = Math.max(random.uniform(0.18, 0.45) * runAmps, 6 * room.logger.noiseAmps);
    const often = random.pick([1, 1, 0.6]);
    return sensorFault(
      'noisy-wire',
      occasion,
      drawClampAt(occasion),
      noiseAmps / runAmps,
      (reading) => {
        reading.noiseAmps = noiseAmps;
      },
      often,
    );
  },
};

/** An amplifier that no longer goes far enough: inrush and stall end at one flat level. */
export const cutOff: Recipe = {
  name: 'cut-off',
  needs: () => ({ ...WHOLE, plainController: true }),
  draw: (occasion) => {
    const { room, random } = occasion;
    const [{ runAmps, ohmAt20C }] = room.sides;
    const stallAmps = room.facts.nominalVolts / ohmAt20C;
    const clipAmps = random.uniform(1.45 * runAmps, 0.6 * stallAmps);
    const at = drawClampAt(occasion);
    const { amps, steps } = tryOut(room, 'extend', () => {}).tape;
    let over = 0;
    for (let step = 0; step < steps; step++) if (amps[at][step] > clipAmps) over++;
    // A level is flat to the eye once several samples lie on it.
    if (over * STEP_S * room.logger.rateHz < 10) return null;
    return sensorFault('cut-off', occasion, at, clipAmps / runAmps, (reading) => {
      reading.clipAmps = clipAmps;
    });
  },
};

/** A radio at the end of its reach. */
export const gaps: Recipe = {
  name: 'gaps',
  needs: () => ({}),
  draw: (occasion) => {
    const part = occasion.random.uniform(0.15, 0.45);
    return sensorFault('gaps', occasion, drawClampAt(occasion), part, (reading) => {
      reading.missedPart = part;
    });
  },
};

/** A clamp that was not put back round its wire. */
export const leftOff: Recipe = {
  name: 'left-off',
  needs: () => ({}),
  draw: (occasion) =>
    sensorFault('left-off', occasion, drawClampAt(occasion), 1, (reading) => {
      reading.off = true;
    }),
};

/** A firmware that writes down another rate than it samples at: the room seems half or twice as fast. */
export const wrongClock: Recipe = {
  name: 'wrong-clock',
  needs: () => ({ ...WHOLE, plainController: true, supply: true }),
  draw: (occasion) => {
    const clock = occasion.random.pick([0.4, 0.5, 2, 2.5]);
    const { room } = occasion;
    const label = {
      kind: 'sensor-doubt',
      severity: clock,
      side: room.sides.length === 1 ? 'main' : null,
    } as const;
    return planFault('wrong-clock', occasion.onset, label, (condition) => {
      condition.clock = clock;
    });
  },
};
