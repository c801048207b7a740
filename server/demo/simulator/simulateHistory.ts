import { calendar } from './calendar.ts';
import { healthyCondition, type StrokeCondition } from './condition.ts';
import type { HistoryPlan } from './plan.ts';
import type { PlannedService } from './plannedService.ts';
import { Random } from './random.ts';
import type { SimulatedRoom } from './room.ts';
import { type SimulatedStroke, simulateStroke } from './simulateStroke.ts';
import { batterySupply, shoreSupply } from './supply.ts';

/** One event of a room's history, in time order; a service stands before the stroke that it was done before. */
type HistoryEvent =
  | (SimulatedStroke & {
      readonly type: 'stroke';
      readonly index: number;
      readonly atMs: number;
      readonly condition: StrokeCondition;
    })
  | {
      readonly type: 'service';
      readonly atMs: number;
      readonly service: PlannedService;
    };

/** Stroke-to-stroke memory of the friction (dirt, damp, where the grease went) and its spread. */
const MEMORY = 0.5;
const FRICTION_SPREAD = 0.012;
const SIDE_SPREAD = 0.006;
const TILT_SPREAD_DEGREES = 0.2;
const SHORE_SHARE = 0.45;

/** What one set-up at a camp has in common for both its strokes. */
interface SetUp {
  readonly tiltDegrees: number;
  readonly shoreVolts: number | null;
  readonly charge: number;
}

function drawSetUp(random: Random): SetUp {
  return {
    tiltDegrees: random.normal(0, TILT_SPREAD_DEGREES),
    shoreVolts: random.chance(SHORE_SHARE) ? random.uniform(13.1, 13.8) : null,
    charge: random.uniform(0.5, 1),
  };
}

/**
 * A room's strokes and services in time order, all strokes in turn extend and retract. Every stroke draws from a source
 * of its own, so that a fault changes the strokes that it touches and no other.
 */
export function* simulateHistory(
  room: SimulatedRoom,
  plan: HistoryPlan,
  seed: number,
): Generator<HistoryEvent> {
  const random = new Random(seed);
  const appointments = calendar(plan, random.fork());
  const services = [
    ...plan.services,
    ...plan.variants.flatMap((variant) => variant.services),
    ...plan.faults.flatMap((fault) => fault.services),
  ];
  const memory = { room: 0, sides: room.motors.map(() => 0) };
  const offsets = room.motors.map(() => random.normal(0, 0.05));
  let setUp = drawSetUp(random);
  let position = 0;
  let last = plan.startsAtMs;
  for (const [index, { atMs, ambientC }] of appointments.entries()) {
    for (const service of services) {
      // Halfway between the strokes: after the one, before the other.
      if (service.beforeStroke === index)
        yield { type: 'service', atMs: Math.round((last + atMs) / 2), service };
    }
    last = atMs;
    const own = random.fork();
    if (index % 2 === 0) setUp = drawSetUp(own);
    memory.room = MEMORY * memory.room + own.normal(0, FRICTION_SPREAD);
    memory.sides = memory.sides.map((side) => MEMORY * side + own.normal(0, SIDE_SPREAD));
    for (const side of offsets.keys()) offsets[side] = 0.9 * offsets[side] + own.normal(0, 0.02);

    let condition = plainCondition(room, index % 2 === 0 ? 'extend' : 'retract', setUp, own, {
      startedAt: new Date(atMs).toISOString(),
      ambientC,
      frictionFactor: Math.exp(memory.room),
      sideFactors: memory.sides.map(Math.exp),
      startPosition: position,
    });
    condition = {
      ...condition,
      sensors: condition.sensors.map((sensor, side) => ({
        ...sensor,
        offsetAmps: offsets[side],
        offsetDriftAmps: own.normal(0, 0.01),
      })),
    };
    for (const variant of plan.variants) condition = variant.change(condition, index, own.fork());
    for (const fault of plan.faults) {
      const present = index >= fault.startsStroke && index < fault.untilStroke;
      if (present) condition = fault.change(condition, index, own.fork());
    }
    const simulated = simulateStroke(room, condition, own.bits());
    const ends = simulated.truth.sides.map((side) => side.endPosition);
    position = ends.reduce((sum, end) => sum + end, 0) / ends.length;
    yield { type: 'stroke', index, atMs, condition, ...simulated };
  }
}

function plainCondition(
  room: SimulatedRoom,
  direction: 'extend' | 'retract',
  setUp: SetUp,
  random: Random,
  changes: Partial<StrokeCondition>,
): StrokeCondition {
  const { ohms, capacityAh } = room.battery;
  const battery = batterySupply(Math.max(setUp.charge - random.uniform(0, 0.1), 0.3), ohms, capacityAh);
  const supply = setUp.shoreVolts === null ? battery : shoreSupply(battery, setUp.shoreVolts, 55);
  const healthy = healthyCondition(room, direction, { tiltDegrees: setUp.tiltDegrees, supply, ...changes });
  return {
    ...healthy,
    logger: {
      ...healthy.logger,
      rateError: 1 + random.normal(0, 2e-4),
      idleBeforeS: random.uniform(0.4, 2),
      idleAfterS: random.uniform(0.4, 2),
    },
  };
}
