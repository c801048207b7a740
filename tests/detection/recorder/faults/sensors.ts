import { namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { changedAt, type Recording } from '../condition.ts';
import type { Random } from '../random.ts';
import type { RecorderRoom } from '../room.ts';
import { always, type FaultKind, plan } from './fault.ts';

/** What a sensor does from its fault on; `faulty` null: the whole logger. */
interface SensorStory {
  readonly faulty: number | null;
  readonly severity: number;
  readonly change: (recording: Recording, random: Random) => Partial<Recording>;
}

function sensorFault(
  name: string,
  fits: FaultKind['fits'],
  tell: (room: RecorderRoom, faulty: number, random: Random) => SensorStory,
): FaultKind {
  return {
    name,
    fits,
    draw(room, onsetStroke, random) {
      const story = tell(room, random.whole(0, room.motors.length - 1), random);
      const label = { kind: 'sensor-doubt', severity: story.severity, onsetStroke } as const;
      return plan(name, room, { ...label, side: namedSide(room, story.faulty) }, (condition, _, source) => ({
        ...condition,
        recording: { ...condition.recording, ...story.change(condition.recording, source) },
      }));
    },
  };
}

const showsInrush = ({ controller, logger }: RecorderRoom) =>
  controller.start === 'relay' && logger.leadS > 0 && logger.rateHz >= 20;

const showsZero = ({ logger }: RecorderRoom) => logger.leadS > 0.3 || logger.tailS > 0.4;

/** A clamp with a jaw that does not close, or a wrong range: inrush, plateau and end stop change alike. */
export const sensorScale = sensorFault('sensor-scale', showsInrush, (_, faulty, random) => {
  const factor = random.chance(0.6) ? random.between(0.55, 0.8) : random.between(1.25, 1.7);
  return {
    faulty,
    severity: Math.abs(Math.log(factor)),
    change: ({ scale }) => ({ scale: changedAt(scale, faulty, (own) => own * factor) }),
  };
});

/** A clamp that reads a current where none flows. */
export const sensorOffset = sensorFault('sensor-offset', showsZero, (room, faulty, random) => {
  const { runningAmps } = room.motors[faulty];
  const amps = random.sign() * Math.max(1, runningAmps * random.between(0.15, 0.4));
  return {
    faulty,
    severity: Math.abs(amps),
    change: ({ zeroAmps }) => ({ zeroAmps: changedAt(zeroAmps, faulty, (zero) => zero + amps) }),
  };
});

/** The range ends below what flows. */
export const sensorClipped = sensorFault('sensor-clipped', showsInrush, (room, faulty, random) => {
  const clip = room.motors[faulty].runningAmps * random.between(0.85, 1.5);
  return {
    faulty,
    severity: clip,
    change: ({ clipAmps }) => ({ clipAmps: changedAt(clipAmps, faulty, () => clip) }),
  };
});

/** A radio link or a card that loses samples in bursts. */
export const sensorGaps = sensorFault('sensor-gaps', always, (room, chosen, random) => {
  const part = random.between(0.2, 0.4);
  const faulty = room.motors.length === 2 && random.chance(0.5) ? null : chosen;
  return {
    faulty,
    severity: part,
    change({ gaps }, source) {
      // A bad link loses the same moments of all sides, a bad input those of its own side alone.
      const lost = part * source.between(0.8, 1.25);
      return { gaps: gaps.map((gap, side) => (faulty === null || side === faulty ? lost : gap)) };
    },
  };
});

/** A broken screen: the plateau drowns in noise. */
export const sensorNoise = sensorFault('sensor-noise', always, (room, faulty, random) => {
  const { runningAmps } = room.motors[faulty];
  const amps = Math.max(7 * room.logger.noiseAmps, random.between(0.12, 0.3) * runningAmps);
  return {
    faulty,
    severity: amps,
    change: ({ noiseAmps }, source) => ({
      noiseAmps: changedAt(noiseAmps, faulty, () => amps * source.between(0.8, 1.2)),
    }),
  };
});

/** The clock runs wrong: the same currents in another time. */
export const sensorClock = sensorFault('sensor-clock', always, (_, __, random) => {
  const clock = random.chance(0.5) ? random.between(0.5, 0.75) : random.between(1.35, 2);
  return { faulty: null, severity: clock, change: () => ({ clock }) };
});

/** A clamp left hanging beside its lead. */
export const clampOff = sensorFault('clamp-off', always, (_, faulty) => ({
  faulty,
  severity: 1,
  change: (recording) => ({ clampOff: changedAt(recording.clampOff, faulty, () => true) }),
}));
