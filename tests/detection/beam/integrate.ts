import type { BrokenTooth, Condition, Slip } from './condition.ts';
import { Controller } from './controller.ts';
import { copperAt } from './drawPlant.ts';
import { MESH, type Plant, STOP } from './plant.ts';
import type { Random } from './random.ts';
import { POINTS, type Resistance, resistanceOf } from './resistance.ts';
import { Supply } from './supply.ts';

/** Step of the integration, seconds. */
export const STEP_S = 0.001;
const CONTROL_STEPS = 5;
const LONGEST_S = 260;
/** The windings' time constant, seconds. */
const WINDING_S = 0.0015;
const SETTLE_S = 0.02;

/** Where the edges stand between strokes, metres from fully retracted, and which way they last went. */
export interface Standing {
  readonly edges: readonly [number, number];
  readonly flank: number;
}

/** One stroke as it truly went, at every step. Currents are positive while they drive the stroke's way. */
export interface Course {
  /** Steps that are filled. */
  readonly length: number;
  readonly amps: readonly Float32Array[];
  /** Turns of each motor as metres of rack, for its ripple. */
  readonly turned: readonly Float32Array[];
  readonly batteryVolts: Float32Array;
  readonly controllerVolts: Float32Array;
  /** When each edge last moved, seconds. */
  readonly endsS: readonly [number, number];
  /** When the motors were off for good, seconds. */
  readonly offS: number;
  readonly end: Standing;
}

/**
 * Runs one stroke: motors, gears with slack, the body in translation and yaw, its friction by impulses (so that it can
 * stand still), the supply, the controller and the user. Semi-implicit Euler at {@link STEP_S}.
 */
export function integrate(plant: Plant, condition: Condition, from: Standing, random: Random): Course {
  const sign = condition.direction === 'extend' ? 1 : -1;
  const motors = plant.motors.length;
  const motorOf = [0, motors - 1];
  const travel = plant.travelMetres;
  const resistances = [
    resistanceOf(plant, condition, 0, random),
    resistanceOf(plant, condition, 1, random),
  ] as const;
  const supply = new Supply(plant, condition);
  const steps = Math.ceil(LONGEST_S / STEP_S);
  const record = () => new Float32Array(steps);
  const amps = plant.motors.map(record);
  const turned = plant.motors.map(record);
  const batteryVolts = record();
  const controllerVolts = record();

  const mass = plant.massKg * condition.massFactor;
  const yawKg = plant.yawKg * condition.massFactor;
  const edgeKg = 1 / (1 / mass + 1 / yawKg);
  let y1 = from.edges[0];
  let y2 = from.edges[1];
  let forward = 0;
  let turning = 0;
  const slack = condition.edges.map(({ slackMetres }) => (plant.backlashMetres + slackMetres) / 2);
  // A gear stands on the flank on which it last pushed.
  const u = plant.motors.map((_, motor) => {
    const edge = motors === 1 ? 0 : motor;
    return from.edges[edge] + from.flank * slack[edge];
  });
  // Where each gear took hold again after a slip; a shaft keeps both edges in time.
  const offset = [0, 0];
  const w = plant.motors.map(() => 0);
  const current = new Float64Array(motors);
  const gone = new Float64Array(motors);
  // Part of the supply that each motor truly gets, which is the part of its current that the battery gives.
  const given = new Float64Array(motors);
  const beganAt = [...u];
  const warmC = plant.motors.map(() => condition.ambientC);
  const ohm = new Float64Array(motors);
  const grease = Math.exp(plant.greasePerC * (20 - condition.ambientC));
  const mesh = [new Mesh(plant, condition, 0), new Mesh(plant, condition, 1)];
  const controller = new Controller(plant, condition, (y1 + y2) / 2);
  const start = (y1 + y2) / 2;
  const settle = STEP_S / SETTLE_S;
  const relax = 1 - Math.exp(-STEP_S / WINDING_S);
  const [inner, outer] = stopsOf(condition, travel);
  const endsS: [number, number] = [0, 0];
  const forces = [0, 0];
  const factors = condition.motors.map(({ emfFactor }, motor) => plant.motors[motor].emf * emfFactor);
  let battery = supply.battery(0);
  let bus = battery;
  let step = 0;
  let offS = 0;

  for (; step < steps; step++) {
    const now = step * STEP_S;
    if (step % CONTROL_STEPS === 0) {
      for (let motor = 0; motor < motors; motor++) {
        gone[motor] = sign * (u[motor] - beganAt[motor]);
        const own = plant.motors[motor];
        const state = condition.motors[motor];
        const heat = current[motor] * current[motor] * own.windingOhm * STEP_S * CONTROL_STEPS;
        warmC[motor] += heat / own.joulesPerKelvin;
        ohm[motor] =
          own.windingOhm * state.windingFactor * copperAt(warmC[motor]) + own.cableOhm + state.furtherOhm;
      }
      const middle = sign * ((y1 + y2) / 2 - start);
      const wasFinished = controller.finished;
      controller.act(STEP_S * CONTROL_STEPS, current, gone, w, middle, now);
      if (controller.finished && !wasFinished) offS = now;
      if (controller.restS() > condition.logger.afterS) break;
    }

    let drawn = 0;
    for (let motor = 0; motor < motors; motor++) drawn += current[motor] * given[motor];
    battery += (supply.battery(drawn) - battery) * settle;
    bus += (supply.controller(supply.battery(drawn), drawn) - bus) * settle;

    const v1 = forward + turning;
    const v2 = forward - turning;
    forces[0] = mesh[0].force(u[0] - y1 - offset[0], w[0] - v1, u[0], y1, slack[0]);
    forces[1] = mesh[1].force(
      u[motorOf[1]] - y2 - offset[1],
      w[motorOf[1]] - v2,
      u[motorOf[1]],
      y2,
      slack[1],
    );
    if (mesh[0].slips) offset[0] = mesh[0].holdAt(u[0] - y1);
    if (mesh[1].slips) offset[1] = mesh[1].holdAt(u[motorOf[1]] - y2);

    for (let motor = 0; motor < motors; motor++) {
      const own = plant.motors[motor];
      const on = controller.duty[motor];
      const wanted = on > 0 ? (on * bus - sign * factors[motor] * w[motor]) / ohm[motor] : 0;
      const held = Math.min(Math.max(0, wanted), controller.ceilingAmps(motor));
      given[motor] = wanted > held ? on * Math.max(0, held / wanted) : on;
      current[motor] += (held - current[motor]) * relax;
      const carried = motors === 1 ? forces[0] + forces[1] : forces[motor];
      const ridden = motors === 1 ? mesh[0].ride + mesh[1].ride : mesh[motor].ride;
      const own1 = condition.motors[motor].ownFactor;
      const driven = own.efficiency * factors[motor] * sign * current[motor];
      const drag = (own.ownNewtonSeconds * grease * own1 + condition.motors[motor].brakes) * w[motor];
      let speed = w[motor] + ((driven - carried - drag) / own.reflectedKg) * STEP_S;
      const stops = ((own.ownNewtons * own1 + ridden) / own.reflectedKg) * STEP_S;
      speed = Math.abs(speed) <= stops ? 0 : speed - Math.sign(speed) * stops;
      w[motor] = speed;
      u[motor] += speed * STEP_S;
      amps[motor][step] = current[motor];
      turned[motor][step] = u[motor];
    }

    // The body: pushes, guides that bear when it yaws, stops.
    const difference = y1 - y2;
    const beyond = Math.abs(difference) - plant.playMetres;
    const bears =
      beyond > 0
        ? Math.sign(difference) * plant.yawNewtonsPerMetre * beyond + 4000 * 2 * turning
        : 1500 * 2 * turning;
    const wedge = beyond > 0 ? plant.wedging * plant.yawNewtonsPerMetre * beyond : 0;
    const f1 =
      forces[0] +
      along(resistances[0].push, y1, travel) -
      resistances[0].viscous * v1 +
      stop(y1, v1, inner, outer);
    const f2 =
      forces[1] +
      along(resistances[1].push, y2, travel) -
      resistances[1].viscous * v2 +
      stop(y2, v2, inner, outer);
    forward += ((f1 + f2) / mass) * STEP_S;
    turning += ((f1 - f2 - 2 * bears) / yawKg) * STEP_S;
    const p1 = frictionImpulse(plant, resistances[0], y1, forward + turning, wedge, edgeKg, travel);
    forward += p1 / mass;
    turning += p1 / yawKg;
    const p2 = frictionImpulse(plant, resistances[1], y2, forward - turning, wedge, edgeKg, travel);
    forward += p2 / mass;
    turning -= p2 / yawKg;
    y1 += (forward + turning) * STEP_S;
    y2 += (forward - turning) * STEP_S;
    if (sign * (forward + turning) > 0.1 * plant.nominal.speed) endsS[0] = now;
    if (sign * (forward - turning) > 0.1 * plant.nominal.speed) endsS[1] = now;
    batteryVolts[step] = battery;
    controllerVolts[step] = bus;
  }
  const within = (metres: number) => Math.min(travel, Math.max(0, metres));
  return {
    length: Math.min(step, steps),
    amps,
    turned,
    batteryVolts,
    controllerVolts,
    endsS,
    offS,
    end: { edges: [within(y1), within(y2)], flank: sign },
  };
}

function stopsOf({ obstacleMetres, direction }: Condition, travel: number): [number, number] {
  if (obstacleMetres === null) return [0, travel];
  return direction === 'extend' ? [0, obstacleMetres] : [obstacleMetres, travel];
}

function stop(y: number, v: number, inner: number, outer: number): number {
  if (y > outer) return Math.min(0, -STOP.stiffness * (y - outer) - STOP.damping * v);
  if (y < inner) return Math.max(0, STOP.stiffness * (inner - y) - STOP.damping * v);
  return 0;
}

function along(table: Float64Array, y: number, travel: number): number {
  const at = (y / travel) * POINTS;
  if (at <= 0) return table[0];
  if (at >= POINTS) return table[POINTS];
  const point = Math.floor(at);
  return table[point] + (at - point) * (table[point + 1] - table[point]);
}

/** The impulse of dry friction on an edge in one step, newton seconds: never more than stops it. */
function frictionImpulse(
  { stribeck }: Plant,
  resistance: Resistance,
  y: number,
  v: number,
  wedge: number,
  edgeKg: number,
  travel: number,
): number {
  const ratio = v / stribeck.metresPerSecond;
  const stick = 1 + stribeck.rise / (1 + ratio * ratio);
  const most = (along(resistance.friction, y, travel) * stick + wedge) * STEP_S;
  const stops = edgeKg * Math.abs(v);
  return v > 0 ? -Math.min(most, stops) : Math.min(most, stops);
}

/** What a gear passes on to its rack, with slack, broken teeth, bare places and slips. */
class Mesh {
  /** Whether the gear is out of the rack in this step. */
  slips = false;
  /** Further resistance on the gear itself, newtons. */
  ride = 0;
  private readonly bare: { from: number; to: number } | null;
  private readonly tooth: BrokenTooth | null;
  private readonly slipsLeft: Slip[];
  private slipping: { slip: Slip; fromTurn: number } | null = null;
  private readonly sign: number;
  private readonly toothMetres: number;

  constructor(plant: Plant, condition: Condition, edge: 0 | 1) {
    const state = condition.edges[edge];
    this.toothMetres = plant.toothMetres;
    this.bare = state.bare;
    this.tooth = state.tooth;
    this.sign = condition.direction === 'extend' ? 1 : -1;
    const way = (slip: Slip) =>
      condition.direction === 'extend' ? slip.atMetres : plant.travelMetres - slip.atMetres;
    this.slipsLeft = [...state.slips].sort((a, b) => way(a) - way(b));
  }

  /** The lead of the motor at which the gear takes hold again: whole teeth, or anywhere in a clutch, metres. */
  holdAt(lead: number): number {
    if (this.slipping?.slip.inClutch) return lead;
    return Math.round(lead / this.toothMetres) * this.toothMetres;
  }

  /** Newtons on the edge. */
  force(windUp: number, closing: number, turnedMetres: number, y: number, halfSlack: number): number {
    this.slips = this.bare !== null && y > this.bare.from && y < this.bare.to;
    this.ride = 0;
    if (this.tooth !== null || this.slipsLeft.length > 0 || this.slipping !== null) {
      this.climb(turnedMetres, y);
    }
    if (this.slips) return 0;
    const slack = halfSlack + this.gap(turnedMetres);
    if (windUp > slack) return Math.max(0, MESH.stiffness * (windUp - slack) + MESH.damping * closing);
    if (windUp < -slack) return Math.min(0, MESH.stiffness * (windUp + slack) + MESH.damping * closing);
    return 0;
  }

  private gap(turnedMetres: number): number {
    const { tooth } = this;
    return tooth !== null && phaseOf(tooth, turnedMetres) < tooth.gapMetres ? tooth.gapMetres : 0;
  }

  private climb(turnedMetres: number, y: number): void {
    const { tooth } = this;
    if (tooth !== null) {
      const along = (phaseOf(tooth, turnedMetres) - tooth.gapMetres) / tooth.rideMetres;
      if (along > 0 && along < 1) this.ride += tooth.newtons * Math.sin(Math.PI * along) ** 2;
    }
    const next = this.slipsLeft[0];
    if (this.slipping === null && next !== undefined && this.sign * (y - next.atMetres) > 0) {
      this.slipping = { slip: next, fromTurn: turnedMetres };
      this.slipsLeft.shift();
    }
    if (this.slipping === null) return;
    const { slip, fromTurn } = this.slipping;
    const way = Math.abs(turnedMetres - fromTurn);
    if (way < slip.climbMetres) this.ride += slip.newtons * Math.sin((Math.PI * way) / slip.climbMetres) ** 2;
    else if (way < slip.climbMetres + slip.freeMetres) this.slips = true;
    else this.slipping = null;
  }
}

function phaseOf({ turnMetres, phaseMetres }: BrokenTooth, turnedMetres: number): number {
  const phase = (turnedMetres - phaseMetres) % turnMetres;
  return phase < 0 ? phase + turnMetres : phase;
}
