import type { StrokeCondition } from './condition.ts';
import type { Movement } from './movements.ts';
import type { Random } from './random.ts';
import type { RecorderRoom } from './room.ts';

/** The condition of a stroke in a healthy room on an ordinary day: weather, feed, ground, load and the user's hand. */
export function usualCondition(
  room: RecorderRoom,
  movement: Movement,
  part: number,
  source: Random,
): StrokeCondition {
  const { logger, scatter, motors } = room;
  const camp = source.branch(`camp ${movement.campIndex}`);
  const random = source.branch(`stroke ${movement.index}`);
  const tilt = odd(camp, scatter.tilt);
  const slope = odd(camp, scatter.slope) * (movement.direction === 'extend' ? 1 : -1);
  const campLevel = odd(camp, scatter.camp);
  const feed = drawFeed(room, camp, movement.ambientC);
  const rested =
    0.05 * Math.min(1, movement.camp.restedDays / 150) * (movement.direction === 'extend' ? 1 : 0.3);
  const cold = Math.min(0.25, Math.max(-0.06, scatter.stiffening * (20 - movement.ambientC)));
  const level = campLevel + slope + rested + scatter.ageing * part + scatter.stroke * random.normal();
  return {
    direction: movement.direction,
    from: movement.from,
    to: movement.to,
    ends: movement.to > 0 && movement.to < 1 ? 'let-go' : 'usual',
    ambientC: movement.ambientC,
    windingC: movement.ambientC + random.between(0, 8),
    openVolts: feed.volts + 0.03 * random.normal(),
    lineOhms: room.places.lineOhms * Math.exp(0.04 * random.normal()),
    level: motors.map((_, side) => Math.exp(level + (side === 0 ? tilt : -tilt)) * (1 + cold)),
    added: [],
    grip: motors.map(() => 1),
    isLoose: () => false,
    inStep: true,
    motors,
    pause: null,
    holdS: random.scaled(0.3, 1.4),
    jogAfterS: 0,
    recording: {
      rateHz: logger.rateHz,
      zeroAmps: logger.zeroAmps.map((zero) => zero + 0.003 * random.normal()),
      scale: logger.scale,
      noiseAmps: motors.map(() => logger.noiseAmps * Math.exp(0.08 * random.normal())),
      clipAmps: motors.map(() => 400),
      gaps: motors.map(() => 0),
      clampOff: motors.map(() => false),
      leftOut: motors.map(() => false),
      leadS:
        logger.leadS > 0 ? logger.leadS * random.between(0.8, 1.2) : logger.leadS * random.between(0.3, 1.3),
      tailS: logger.tailS * random.between(0.6, 1.2),
      missed: logger.missed,
      clock: 1,
    },
  };
}

/** A normal deviate of a given standard deviation; one in fifty is twice as wide. */
function odd(random: Random, deviation: number): number {
  const deviate = Math.max(-2.6, Math.min(2.6, random.normal()));
  return deviation * deviate * (random.chance(0.02) ? 1.6 : 1);
}

/** Shore converter, solar charging or the battery at some state of charge. */
function drawFeed({ places, facts }: RecorderRoom, random: Random, ambientC: number): { volts: number } {
  const kind = random.part();
  const cold = -0.006 * Math.max(0, 20 - ambientC);
  const volts =
    kind < places.shore
      ? random.between(13.3, 13.9)
      : kind < places.shore + places.solar
        ? random.between(12.9, 14.3)
        : 11.9 + 0.9 * Math.sqrt(random.part()) + cold;
  return { volts: (volts * facts.nominalVolts) / 12 };
}
