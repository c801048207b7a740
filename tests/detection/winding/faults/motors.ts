import { anySide, type LabelParts, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { drawOnset, type FaultRecipe, lastingFault } from '../fault.ts';
import type { WindingRoom } from '../room.ts';
import { lagS, sizeFor, sizeForRise } from '../sizing.ts';

/** Magnets that were too hot have lost field: more current for the same force. */
export const weakMagnets: FaultRecipe = {
  name: 'weak-magnets',
  needs: { pacings: ['pwm', 'pause'] },
  cure: 'motor-replaced',
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const rise = random.uniform(0.15, 0.35);
    const size = sizeForRise(room, side, rise, 0.5, (state, each) => {
      state.sides[side].newtonsPerAmp *= 1 - each;
    });
    return lastingFault(
      'weak-magnets',
      drawOnset(random, strokes),
      {
        kind: 'rising-draw',
        alsoFits: room.motors.length === 2 ? ['uneven-sides'] : [],
        severity: rise,
        side: namedSide(room, side),
      },
      (state) => {
        state.sides[side].newtonsPerAmp *= 1 - size;
      },
    );
  },
};

/** A gearbox without grease drags at its motor whatever the room asks for. */
export const dryGearbox: FaultRecipe = {
  name: 'dry-gearbox',
  needs: { pacings: ['pwm', 'pause'] },
  cure: 'motor-replaced',
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const rise = random.uniform(0.15, 0.4);
    const size = sizeForRise(room, side, rise, 6, (state, each) => {
      state.sides[side].noLoad *= 1 + each;
    });
    return lastingFault(
      'dry-gearbox',
      drawOnset(random, strokes),
      {
        kind: 'rising-draw',
        alsoFits: room.motors.length === 2 ? ['uneven-sides'] : [],
        severity: rise,
        side: namedSide(room, side),
      },
      (state) => {
        state.sides[side].noLoad *= 1 + size;
      },
    );
  },
};

/** So much later is a fault that people see. */
function drawLagS(durationS: number, part: number): number {
  return Math.max(1, part * durationS);
}

/** A side that comes late, and the other, which the frame makes pull at it. */
function lateLabel(room: WindingRoom, side: number, lateS: number): LabelParts {
  return {
    kind: 'late-side',
    alsoFits: ['uneven-sides', 'rising-draw'],
    severity: lateS,
    side: namedSide(room, side),
  };
}

/** A clutch that slips under load: the motor turns as ever, its side of the room falls behind. */
export const slippingClutch: FaultRecipe = {
  name: 'slipping-clutch',
  needs: { sides: 2, endings: ['hand', 'current-limit'] },
  cure: 'adjusted',
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const late = drawLagS(room.durationS, random.uniform(0.07, 0.14));
    const slip = sizeFor(late, 0, 0.4, (size) =>
      lagS(room, side, (state) => {
        state.sides[side].slip = size;
      }),
    );
    return lastingFault(
      'slipping-clutch',
      drawOnset(random, strokes),
      lateLabel(room, side, late),
      (state, _, chance) => {
        state.sides[side].slip = slip * chance.uniform(0.85, 1.15);
      },
    );
  },
};

/** A corroded plug takes volts from one motor, which falls behind where no controller keeps the two in step. */
export const corrodedPlug: FaultRecipe = {
  name: 'corroded-plug',
  needs: { sides: 2, pacings: ['none'], endings: ['hand'] },
  cure: 'other',
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const late = drawLagS(room.durationS, random.uniform(0.07, 0.13));
    const ohms = sizeFor(late, 0, 6 / room.runningAmps, (size) =>
      lagS(room, side, (state) => {
        state.sides[side].extraLeadOhms = size;
      }),
    );
    return lastingFault(
      'corroded-plug',
      drawOnset(random, strokes),
      lateLabel(room, side, late),
      (state, _, chance) => {
        state.sides[side].extraLeadOhms = ohms * chance.uniform(0.92, 1.08);
      },
    );
  },
};
