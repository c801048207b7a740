import { anySide, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { drawOnset, type FaultRecipe, lastingFault } from '../fault.ts';
import { peakAmps, sizeFor, steadyAmps } from '../sizing.ts';

/** A rail bent over a hand's breadth or two: more friction there, both ways. */
export const bentRail: FaultRecipe = {
  name: 'bent-rail',
  needs: { pacings: ['pwm', 'pause'] },
  cure: 'other',
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const half = random.uniform(0.07, 0.12);
    const place = random.uniform(0.25, 0.75);
    const rise = random.uniform(0.1, 0.16);
    const before = steadyAmps(room, () => {})[side];
    const stretch = (newtons: number) => ({ from: place - half, to: place + half, newtons, in: null });
    const newtons = sizeFor(1 + rise, 0, 4 * room.guides[side].coulombNewtons, (size) => {
      return steadyAmps(room, (state) => state.sides[side].stretches.push(stretch(size)))[side] / before;
    });
    return lastingFault(
      'bent-rail',
      drawOnset(random, strokes),
      {
        kind: 'rising-draw',
        alsoFits: room.motors.length === 2 ? ['stall-spike', 'uneven-sides'] : ['stall-spike'],
        severity: rise,
        side: namedSide(room, side),
        position: place,
      },
      (state) => {
        state.sides[side].stretches.push(stretch(newtons));
      },
    );
  },
};

/** A seal torn loose and folded under the room: it rubs from where it is torn on, on all sides, harder going out. */
export const foldedSeal: FaultRecipe = {
  name: 'folded-seal',
  needs: {},
  cure: 'other',
  draw(room, random, strokes) {
    const from = random.uniform(-0.1, 0.35);
    const rise = random.uniform(0.16, 0.35);
    const before = steadyAmps(room, () => {})[0];
    const goal = (size: number) =>
      steadyAmps(room, (state) => {
        for (const own of state.sides) own.stretches.push({ from, to: 1.3, newtons: size, in: null });
      })[0] / before;
    const newtons = sizeFor(1 + rise, 0, 3 * room.guides[0].coulombNewtons, goal);
    return lastingFault(
      'folded-seal',
      drawOnset(random, strokes),
      { kind: 'rising-draw', severity: rise, side: namedSide(room, null) },
      (state, _, chance) => {
        const part = (state.direction === 'extend' ? 1 : 0.7) * chance.uniform(0.9, 1.1);
        for (const own of state.sides) {
          own.stretches.push({ from, to: 1.3, newtons: newtons * part, in: null });
        }
      },
    );
  },
};

/** A screw that stands proud of the rail: the shoe climbs over its head, at one place, both ways. */
export const proudFastener: FaultRecipe = {
  name: 'proud-fastener',
  needs: { leastRateHz: 25 },
  cure: 'fasteners-seated',
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const place = random.uniform(0.15, 0.85);
    const metresPerSample = room.travelMetres / room.durationS / room.logger.rateHz[side];
    const widthMetres = Math.max(random.uniform(0.008, 0.018), 4 * metresPerSample);
    const half = widthMetres / 2 / room.travelMetres;
    const rise = random.uniform(0.4, 1.3);
    const stretch = (newtons: number) => ({ from: place - half, to: place + half, newtons, in: null });
    const newtons = sizeFor(room.runningAmps * (1 + rise), 0, 12 * room.guides[side].coulombNewtons, (size) =>
      peakAmps(room, side, place - half, place + half, (state) =>
        state.sides[side].stretches.push(stretch(size)),
      ),
    );
    const wayBack = random.uniform(0.7, 1);
    return lastingFault(
      'proud-fastener',
      drawOnset(random, strokes),
      {
        kind: 'stall-spike',
        severity: rise,
        side: namedSide(room, side),
        position: place,
        pattern: 'same-place',
      },
      (state, _, chance) => {
        const part = chance.uniform(0.85, 1.15) * (state.direction === 'retract' ? wayBack : 1);
        state.sides[side].stretches.push(stretch(newtons * part));
      },
    );
  },
};
