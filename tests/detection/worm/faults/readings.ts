import type { FaultLabel } from '../../../../server/demo/simulator/faults/fault.ts';
import type { ReadingCondition } from '../condition.ts';
import type { RoomNeeds } from '../drawRoom.ts';
import { eachOf, nameOf, type Occasion, planFault, type Recipe, type WormFault } from '../fault.ts';

/** A fault of one side's clamp or converter, drawn as what it does to the reading. */
function clampFault(
  name: string,
  needs: RoomNeeds,
  draw: (occasion: Occasion, at: number) => { severity: number; change: (reading: ReadingCondition) => void },
): Recipe {
  return {
    name,
    needs: () => needs,
    draw(occasion): WormFault {
      const { room, onset, random } = occasion;
      const at = random.integer(0, room.sides.length - 1);
      const { severity, change } = draw(occasion, at);
      const label: Pick<FaultLabel, 'kind' | 'side' | 'severity'> = {
        kind: 'sensor-doubt',
        side: nameOf(room, at),
        severity,
      };
      return planFault(name, onset, label, (condition) =>
        eachOf(condition, at, ({ reading }) => change(reading)),
      );
    },
  };
}

/** The converter's range was set too small: nothing above a level is read. */
export const clipped = clampFault('clipped', {}, ({ room, random }, at) => {
  const { runAmps, motor } = room.sides[at];
  const stall = room.facts.nominalVolts / motor.ohm;
  const part = random.uniform(0.3, 0.7);
  const level = runAmps * 1.15 + part * Math.max(0, 0.8 * stall - 1.15 * runAmps);
  return {
    severity: 1 - level / stall,
    change: (reading) => {
      reading.clipAmps = level;
    },
  };
});

/** A zero that jumped, as after a clamp was knocked. */
export const zeroJumped = clampFault('zero jumped', { restRecorded: true }, ({ room, random }, at) => {
  const { runAmps } = room.sides[at];
  const size =
    random.uniform(Math.max(0.2 * runAmps, 0.6), Math.max(0.7 * runAmps, 1)) * (random.chance(0.5) ? 1 : -1);
  return {
    severity: Math.abs(size) / runAmps,
    change: (reading) => {
      reading.zeroAmps += size;
    },
  };
});

/** Another range, or a second turn of the wire through the clamp. */
export const scaleChanged = clampFault('scale changed', {}, ({ random }) => {
  const gain = random.chance(0.5) ? random.uniform(0.45, 0.75) : random.uniform(1.3, 2);
  return {
    severity: Math.abs(gain - 1),
    change: (reading) => {
      reading.gain *= gain;
    },
  };
});

/** A loose plug: stretches of the record are missing. */
export const gaps = clampFault('gaps', {}, ({ random }) => {
  const share = random.uniform(0.15, 0.5);
  return {
    severity: share,
    change: (reading) => {
      reading.missedShare += share;
    },
  };
});

/** A broken screen: the reading jumps about. */
export const noisy = clampFault('noisy', {}, ({ room, random }, at) => {
  const amps = Math.max(5 * room.logger.noiseAmps, random.uniform(0.25, 0.6) * room.sides[at].runAmps);
  return {
    severity: amps / room.sides[at].runAmps,
    change: (reading) => {
      reading.addedNoiseAmps = amps;
    },
  };
});

/** The clamp hangs beside its wire. */
export const leftOff = clampFault('left off', { directionGiven: true }, () => ({
  severity: 1,
  change: (reading) => {
    reading.off = true;
  },
}));

/** The logger's clock runs wrong: all strokes last longer or shorter than they did, on every side. */
export const wrongClock: Recipe = {
  name: 'wrong clock',
  needs: () => ({}),
  draw({ room, onset, random }) {
    const clock = random.chance(0.5) ? random.uniform(0.6, 0.8) : random.uniform(1.25, 1.7);
    return planFault(
      this.name,
      onset,
      {
        kind: 'sensor-doubt',
        side: room.sides.length === 1 ? nameOf(room, 0) : null,
        severity: Math.abs(1 - clock),
      },
      (condition) => {
        condition.clock = clock;
      },
    );
  },
};
