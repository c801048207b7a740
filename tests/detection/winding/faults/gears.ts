import { anySide, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { drawOnset, type FaultRecipe, lastingFault } from '../fault.ts';
import type { WindingRoom } from '../room.ts';
import { peakAmps, sizeFor } from '../sizing.ts';
import type { SideState } from '../strokeState.ts';

/** Where a bad tooth is missing, the rack is let go over half a pitch; then the next tooth strikes. */
function missTooth(own: SideState, room: WindingRoom, position: number, newtons: number): void {
  const pitch = room.pitchMetres / room.travelMetres;
  own.stretches.push(
    { from: position - 0.8 * pitch, to: position - 0.1 * pitch, newtons: -0.35 * newtons, in: null },
    { from: position - 0.2 * pitch, to: position + 0.9 * pitch, newtons, in: null },
  );
}

/** The blow at which the current in mid-travel peaks so far above the running current. */
function sizeOfBlow(room: WindingRoom, side: number, rise: number): number {
  return sizeFor(room.runningAmps * (1 + rise), 0, 12 * room.guides[side].coulombNewtons, (size) =>
    peakAmps(room, side, 0.44, 0.56, (state) => missTooth(state.sides[side], room, 0.5, size)),
  );
}

/** One tooth of the gear is broken: once a turn, at the same places of the rack. */
export const brokenTooth: FaultRecipe = {
  name: 'broken-tooth',
  needs: { sides: 2, drives: ['in-wall'], tellsTeeth: true, leastRateHz: 50 },
  cure: 'gear-replaced',
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const rise = random.uniform(0.3, 1);
    const newtons = sizeOfBlow(room, side, rise);
    const turn = (room.teeth * room.pitchMetres) / room.travelMetres;
    const first = random.uniform(0, turn);
    return lastingFault(
      'broken-tooth',
      drawOnset(random, strokes),
      { kind: 'stall-spike', severity: rise, side: namedSide(room, side), pattern: 'once-per-turn' },
      (state, _, chance) => {
        for (let place = first; place < 1; place += turn) {
          missTooth(state.sides[side], room, place, newtons * chance.uniform(0.8, 1.2));
        }
      },
    );
  },
};

/** A gear too far from its rack: it jumps a tooth now and then, anywhere. */
export const looseMesh: FaultRecipe = {
  name: 'loose-mesh',
  needs: { leastRateHz: 50 },
  cure: 'adjusted',
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const rise = random.uniform(0.35, 1.2);
    const newtons = sizeOfBlow(room, side, rise);
    return lastingFault(
      'loose-mesh',
      drawOnset(random, strokes),
      { kind: 'stall-spike', severity: rise, side: namedSide(room, side), pattern: 'scattered' },
      (state, _, chance) => {
        const jumps = chance.integer(2, 7);
        for (let jump = 0; jump < jumps; jump++) {
          missTooth(state.sides[side], room, chance.uniform(0.06, 0.94), newtons * chance.uniform(0.7, 1.3));
        }
      },
    );
  },
};

/** The pin between gearbox and shaft has sheared: the motor turns for nothing, the other side drags the room. */
export const shearedPin: FaultRecipe = {
  name: 'sheared-pin',
  needs: { sides: 2 },
  cure: 'other',
  draw(room, random, strokes) {
    const side = anySide(room, random);
    return lastingFault(
      'sheared-pin',
      drawOnset(random, strokes),
      {
        kind: 'dropped-load',
        // The other side draws what both drew.
        alsoFits: ['uneven-sides', 'rising-draw'],
        severity: 1,
        side: namedSide(room, side),
      },
      (state) => {
        state.sides[side].free = [-1, 2];
      },
    );
  },
};

/** A stretch of the rack has lost its teeth: the gear turns free there. */
export const strippedRack: FaultRecipe = {
  name: 'stripped-rack',
  needs: { sides: 2 },
  cure: 'gear-replaced',
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const part = random.uniform(0.2, 0.5);
    const from = random.uniform(0.12, 0.88 - part);
    return lastingFault(
      'stripped-rack',
      drawOnset(random, strokes),
      {
        kind: 'dropped-load',
        alsoFits: ['uneven-sides', 'stall-spike', 'rising-draw'],
        severity: part,
        side: namedSide(room, side),
      },
      (state) => {
        state.sides[side].free = [from, from + part];
      },
    );
  },
};

/** The only motor turns for nothing and the room stays where it is; somebody holds the switch for some seconds. */
export const strippedGear: FaultRecipe = {
  name: 'stripped-gear',
  needs: { sides: 1, endings: ['hand'] },
  draw(room, random, strokes) {
    const onset = drawOnset(random, strokes);
    const tries = random.integer(6, 10);
    const fault = lastingFault(
      'stripped-gear',
      onset,
      { kind: 'dropped-load', alsoFits: ['short-travel'], severity: 1, side: namedSide(room, 0) },
      (state, _, chance) => {
        state.sides[0].free = [-1, 2];
        state.releaseS = chance.uniform(3, 8);
      },
    );
    return {
      ...fault,
      untilStroke: onset + tries,
      services: [{ beforeStroke: onset + tries, kind: 'gear-replaced', side: null }],
    };
  },
};
