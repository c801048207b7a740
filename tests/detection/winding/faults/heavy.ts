import { anySide, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Random } from '../../../../server/demo/simulator/random.ts';
import { type FaultRecipe, lastingFault, type WindingFault } from '../fault.ts';
import type { WindingRoom } from '../room.ts';
import { sizeFor, steadyAmps } from '../sizing.ts';
import { roughen } from './roughen.ts';

/** A motor that is asked for more than this part of its stall current under way hardly starts. */
const MOST_OF_STALL = 0.42;

/** Heavy from the first stroke on: `limitAmps` is what nobody would call heavy yet, `wantedAmps` what is aimed at. */
function heavyFault(
  name: string,
  room: WindingRoom,
  random: Random,
  limitAmps: number,
  wantedAmps: number,
): WindingFault {
  // A controller keeps each side's load to itself; without one, the frame makes both heavy.
  const side = room.controller.pacing === 'pwm' ? anySide(room, random) : null;
  const [motor] = room.motors;
  const most = (MOST_OF_STALL * 12.5) / (motor.ohmsAt20C + motor.leadOhms);
  const drawn = (size: number) => steadyAmps(room, (state) => roughen(state, side, size));
  const size = sizeFor(wantedAmps, 0, 12, (each) => {
    const amps = drawn(each);
    if (Math.max(...amps) > most) return Number.POSITIVE_INFINITY;
    return side === null ? Math.min(...amps) : amps[side];
  });
  const amps = drawn(size);
  const heavy = amps.flatMap((value, index) => (value > limitAmps ? [index] : []));
  // Where the motors of the other side stay below the limit, only this one is heavy.
  const named = heavy.length === 1 ? heavy[0] : null;
  return lastingFault(
    name,
    0,
    { kind: 'heavy-room', severity: Math.max(...amps) / room.runningAmps, side: namedSide(room, named) },
    (state) => roughen(state, side, size),
  );
}

/** The racks carry the room from the first day on, and its maker's rating says so. */
export const heavyRated: FaultRecipe = {
  name: 'heavy-rated',
  needs: {
    leastStallRatio: 7,
    tellsRating: true,
    endings: ['hand', 'limit-switch'],
    pacings: ['none', 'pwm'],
  },
  draw(room, random) {
    const rated = room.facts.ratedAmps ?? room.runningAmps;
    return heavyFault('heavy-rated', room, random, 1.2 * rated, rated * random.uniform(1.3, 1.7));
  },
};

/** The same where nobody knows the rating: racks that only guide need a few amperes, and these draw many. */
export const heavyUnrated: FaultRecipe = {
  name: 'heavy-unrated',
  needs: {
    sides: 2,
    drives: ['in-wall'],
    runningAmps: [9, 12],
    leastStallRatio: 6,
    tellsRating: false,
    endings: ['hand', 'limit-switch'],
    pacings: ['none', 'pwm'],
  },
  draw(room, random) {
    return heavyFault('heavy-unrated', room, random, 15, random.uniform(17, 24));
  },
};
