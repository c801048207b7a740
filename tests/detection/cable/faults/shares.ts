import type { Condition } from '../condition.ts';
import { mostRise, nameOf, planFault, type Recipe } from '../fault.ts';
import { seek, tryOut } from '../mildStroke.ts';
import type { CableRoom } from '../room.ts';

/** A room that was set down out of square: one side carries what the other no longer does. */
export const outOfSquare: Recipe = {
  name: 'out-of-square',
  needs: () => ({ gearings: ['side-by-side', 'rack'] }),
  draw: ({ room, random, onset }) => {
    const at = random.integer(0, 1);
    const shift = random.uniform(0.09, 0.16);
    const bear = (condition: Condition, moved: number) =>
      condition.sides.forEach((side, index) => {
        side.rolling *= index === at ? 1 + moved : Math.max(0.2, 1 - moved);
      });
    const usual = shareOf(room, at, () => {});
    const moved = seek(0, 0.8, usual + shift, (part) =>
      shareOf(room, at, (condition) => bear(condition, part)),
    );
    if (moved === null || mostRise(room) < 0.5) return null;
    const label = {
      kind: 'uneven-sides',
      severity: shift,
      side: nameOf(room, at),
      alsoFits: ['rising-draw'],
    } as const;
    return planFault('out-of-square', onset, label, (condition) => bear(condition, moved));
  },
};

function shareOf(room: CableRoom, at: number, change: (condition: Condition) => void): number {
  const { runAmps } = tryOut(room, 'extend', change);
  return runAmps[at] / (runAmps[0] + runAmps[1]);
}

/** Worn brushes or a bad joint in one motor's wire, where each side goes at its own pace. */
export const tiredMotor: Recipe = {
  name: 'tired-motor',
  needs: () => ({ gearings: ['side-by-side', 'rack'], loose: true, wholeRecord: true, leastRateHz: 20 }),
  draw: ({ room, random, onset }) => {
    const at = random.integer(0, 1);
    const usual = lagOf(room, at, 1);
    const lag = random.uniform(0.09, 0.2) * (room.travelMetres / room.speed);
    const ohm = seek(1, 2.6, usual + lag, (times) => lagOf(room, at, times));
    if (ohm === null || lag < 0.9) return null;
    const often = random.chance(0.3) ? 0.6 : 1;
    // The side that goes on ahead drags the other along through the box.
    const label = { kind: 'late-side', severity: lag, side: nameOf(room, at) } as const;
    return planFault('tired-motor', onset, label, (condition, _index, _lived, own) => {
      if (own.chance(often)) condition.sides[at].ohm *= ohm;
    });
  },
};

function lagOf(room: CableRoom, at: number, ohm: number): number {
  const { endsS } = tryOut(room, 'extend', (condition) => {
    condition.sides[at].ohm *= ohm;
  });
  return endsS[at] - endsS[1 - at];
}

/** A key that has sheared, or a rack that has lost its gear: that side's motor turns with nothing on it. */
export const shearedKey: Recipe = {
  name: 'sheared-key',
  needs: () => ({ gearings: ['side-by-side', 'rack'], plainController: true }),
  draw: ({ room, random, onset }) => {
    if (mostRise(room) < 1 || room.boxNewtonsPerMetre < 15 * room.sides[0].rollingNewtons) return null;
    const at = random.integer(0, 1);
    const from = random.chance(0.5) ? 0 : random.uniform(0.2, 0.5);
    const to = from === 0 && random.chance(0.6) ? 1 : from + random.uniform(0.3, 0.45);
    const label = {
      kind: 'dropped-load',
      severity: to - from,
      side: nameOf(room, at),
      alsoFits: ['uneven-sides'],
    } as const;
    return planFault('sheared-key', onset, label, (condition) => {
      condition.sides[at].lost.push({ from: from === 0 ? -1 : from, to: to === 1 ? 2 : to, part: 0 });
    });
  },
};

/** A coupling or drum that slips after a part of the way: the motor runs light until somebody lets go of the switch. */
export const slippingDrum: Recipe = {
  name: 'slipping-drum',
  needs: () => ({ gearings: ['drum', 'cross-shaft', 'ram'], plainController: true }),
  draw: ({ room, random, onset }) => {
    const seconds = room.travelMetres / room.speed;
    const often = random.chance(0.5) ? 1 : random.uniform(0.5, 0.8);
    const slips = random.uniform(0.15, 0.35) * seconds;
    const from = random.uniform(0.2, 0.6);
    const label = { kind: 'dropped-load', severity: slips, side: 'main' } as const;
    return planFault('slipping-drum', onset, label, (condition, _index, lived, own) => {
      if (!own.chance(often)) return;
      condition.slips.push({
        at: lived.direction === 'extend' ? from : 1 - from,
        seconds: slips * own.uniform(0.8, 1.2),
      });
    });
  },
};
