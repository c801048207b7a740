import { anySide, type LabelParts, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { drawOnset, type FaultRecipe, lastingFault } from '../fault.ts';

const KIND = 'sensor-doubt';

/** The meter was set to a range that the motor exceeds: its peaks are cut flat. */
export const clipped: FaultRecipe = {
  name: 'clipped',
  needs: { leastRateHz: 20, endings: ['hand', 'current-limit'] },
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const most = room.runningAmps * random.uniform(0.95, 2.2);
    const label: LabelParts = { kind: KIND, severity: most / room.runningAmps, side: namedSide(room, side) };
    return lastingFault('clipped', drawOnset(random, strokes), label, (state) => {
      state.sides[side].clamp.clipAmps = most;
    });
  },
};

/** The zero has moved, and shows at rest. */
export const movedZero: FaultRecipe = {
  name: 'moved-zero',
  needs: { recordsRest: true },
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const amps = room.runningAmps * random.uniform(0.15, 0.45) * random.pick([-1, 1]);
    const label: LabelParts = {
      kind: KIND,
      alsoFits: room.motors.length === 2 ? ['rising-draw', 'uneven-sides'] : ['rising-draw'],
      severity: Math.abs(amps),
      side: namedSide(room, side),
    };
    return lastingFault('moved-zero', drawOnset(random, strokes), label, (state) => {
      state.sides[side].clamp.offsetAmps = amps;
    });
  },
};

/** The wire goes through the clamp twice, or half of it does, or the meter's factor is another one. */
export const otherScale: FaultRecipe = {
  name: 'other-scale',
  needs: { leastRateHz: 25, endings: ['hand', 'current-limit'] },
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const gain = random.pick([0.1, 0.5, 0.5, 2, 2]);
    const label: LabelParts = {
      kind: KIND,
      alsoFits: alsoByScale(gain, room.motors.length),
      severity: gain,
      side: namedSide(room, side),
    };
    return lastingFault('other-scale', drawOnset(random, strokes), label, (state) => {
      state.sides[side].clamp.gain = gain;
    });
  },
};

function alsoByScale(gain: number, sides: number): LabelParts['alsoFits'] {
  if (sides === 1) return gain > 1 ? ['rising-draw'] : [];
  return gain > 1 ? ['rising-draw', 'uneven-sides'] : ['uneven-sides', 'dropped-load'];
}

/** A loose plug at the logger: whole parts of the record are missing. */
export const gaps: FaultRecipe = {
  name: 'gaps',
  needs: {},
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const part = random.uniform(0.2, 0.5);
    const label: LabelParts = { kind: KIND, severity: part, side: namedSide(room, side) };
    return lastingFault('gaps', drawOnset(random, strokes), label, (state, _, chance) => {
      const { clamp } = state.sides[side];
      const blocks = chance.integer(2, 5);
      for (let block = 0; block < blocks; block++) {
        const from = chance.uniform(0.02, 0.98 - part / blocks);
        clamp.gaps.push([from, from + part / blocks]);
      }
      clamp.missedPart = 0.1;
    });
  },
};

/** A broken shield: the record trembles with what the converters of the coach radiate. */
export const noisy: FaultRecipe = {
  name: 'noisy',
  needs: {},
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const amps = room.runningAmps * random.uniform(0.25, 0.6);
    const label: LabelParts = { kind: KIND, severity: amps, side: namedSide(room, side) };
    return lastingFault('noisy', drawOnset(random, strokes), label, (state, _, chance) => {
      state.sides[side].clamp.noiseAmps = amps * chance.uniform(0.8, 1.2);
    });
  },
};

/** The clamp was left on the bench. */
export const clampOff: FaultRecipe = {
  name: 'clamp-off',
  needs: {},
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const label: LabelParts = {
      kind: KIND,
      alsoFits: ['dropped-load'],
      severity: 1,
      side: namedSide(room, side),
    };
    return lastingFault('clamp-off', drawOnset(random, strokes), label, (state) => {
      state.sides[side].clamp.isOff = true;
    });
  },
};

/** The clamp was put on the other way round, and the record still says which way the room went. */
export const clampTurned: FaultRecipe = {
  name: 'clamp-turned',
  needs: { onMotorLead: true, tellsDirection: true },
  draw(room, random, strokes) {
    const side = anySide(room, random);
    const label: LabelParts = { kind: KIND, severity: 2, side: namedSide(room, side) };
    return lastingFault('clamp-turned', drawOnset(random, strokes), label, (state) => {
      state.sides[side].clamp.gain = -1;
    });
  },
};
