import type { Random } from '../../../../server/demo/simulator/random.ts';
import { anySide, type FaultRecipe, lastingFault, sideName, type WindingFault } from '../fault.ts';
import type { WindingRoom } from '../room.ts';
import { sizeFor, steadyAmps } from '../sizing.ts';
import { roughen } from './roughen.ts';

/** A motor that is asked for more than this part of its stall current under way hardly starts. */
const MOST_OF_STALL = 0.42;

function heavyFault(
  name: string,
  room: WindingRoom,
  random: Random,
  wantedAmps: number,
  mayBeOneSided: boolean,
): WindingFault {
  const side = mayBeOneSided && room.motors.length === 2 && random.chance(0.4) ? anySide(room, random) : null;
  const [motor] = room.motors;
  const most = (MOST_OF_STALL * 12.5) / (motor.ohmsAt20C + motor.leadOhms);
  const wanted = Math.min(wantedAmps, most);
  // Where all are heavy, the easier side is so as well.
  const drawn = (size: number) => {
    const amps = steadyAmps(room, (state) => roughen(state, side, size));
    return side === null ? Math.min(...amps) : amps[side];
  };
  const size = sizeFor(wanted, 0, 12, drawn);
  return lastingFault(
    name,
    0,
    { kind: 'heavy-room', severity: wanted / room.runningAmps, side: sideName(room, side) },
    (state) => roughen(state, side, size),
  );
}

/** The racks carry the room from the first day on, and its maker's rating says so. */
export const heavyRated: FaultRecipe = {
  name: 'heavy-rated',
  needs: { tellsRating: true, endings: ['hand', 'limit-switch'], pacings: ['none', 'pwm'] },
  draw(room, random) {
    const rated = room.facts.ratedAmps ?? room.runningAmps;
    const isPaced = room.controller.pacing === 'pwm';
    return heavyFault('heavy-rated', room, random, rated * random.uniform(1.3, 1.7), isPaced);
  },
};

/** The same where nobody knows the rating: racks that only guide need a few amperes, and these draw many. */
export const heavyUnrated: FaultRecipe = {
  name: 'heavy-unrated',
  needs: {
    sides: 2,
    drives: ['in-wall'],
    runningAmps: [10.5, 12],
    tellsRating: false,
    endings: ['hand', 'limit-switch'],
    pacings: ['none', 'pwm'],
  },
  draw(room, random) {
    const isPaced = room.controller.pacing === 'pwm';
    return heavyFault('heavy-unrated', room, random, random.uniform(17, 24), isPaced);
  },
};
