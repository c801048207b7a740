import type { Drive } from '../../../analysis/trace.ts';
import { Random } from './random.ts';
import type { RoomFacts, SideMotor, SimulatedRoom } from './room.ts';

/** What may be asked of a room that is otherwise drawn by its seed. */
export interface DrawRoomOptions {
  readonly drive?: Drive;
  readonly name?: string;
  readonly sides?: readonly string[];
  readonly travelMetres?: number;
  readonly gearTeeth?: number;
  readonly rackPitchMm?: number;
  /** Median running current of a side, mid-travel, at 12.6 V, 20 °C, level, extending. */
  readonly runningAmps?: number;
  readonly strokeS?: number;
  readonly rateHz?: number;
  readonly noiseAmps?: number;
  readonly supplyRateHz?: number | null;
}

const CALIBRATION_VOLTS = 12.6;
/** Beyond this no fuse or wire of a slide room would last. */
const GREATEST_STALL_AMPS = 130;
const SIDE_NAMES = [
  ['front', 'rear'],
  ['left', 'right'],
  ['fore', 'aft'],
] as const;
const SAMPLE_RATES = [10, 20, 25, 40, 50, 80, 100, 125, 200] as const;
const CLAMP_RANGES = [30, 60, 100, 150, 200, 300] as const;
const TEXTURE_KNOTS = 24;

/** A smooth course about 1: a random walk that is drawn back to its middle. */
function drawTexture(random: Random, roughness: number): number[] {
  const knots: number[] = [];
  let level = random.normal(0, roughness);
  for (let knot = 0; knot < TEXTURE_KNOTS; knot++) {
    level = 0.75 * level + random.normal(0, roughness * 0.66);
    knots.push(Math.min(Math.max(1 + level, 0.6), 1.4));
  }
  const middle = knots.toSorted((one, other) => one - other)[knots.length >> 1];
  return knots.map((value) => value / middle);
}

interface MotorWish {
  readonly runningAmps: number;
  readonly stallAmps: number;
  readonly speedMetresPerS: number;
  readonly loadShare: number;
  readonly roughness: number;
}

function drawMotor(random: Random, wish: MotorWish): SideMotor {
  const ohms = CALIBRATION_VOLTS / wish.stallAmps;
  const wireOhms = ohms * random.uniform(0.06, 0.2);
  const shaftRadiansPerS = random.logUniform(200, 500);
  const fluxConstant = (CALIBRATION_VOLTS - wish.runningAmps * ohms) / shaftRadiansPerS;
  const startS = random.logUniform(0.025, 0.09);
  return {
    windingOhms: ohms - wireOhms,
    wireOhms,
    inductanceHenry: ohms * random.logUniform(0.001, 0.004),
    fluxConstant,
    noLoadAmps: wish.runningAmps * random.uniform(0.12, 0.3),
    inertia: (startS * fluxConstant * fluxConstant) / ohms,
    heatCapacityJPerK: 20 * wish.runningAmps * random.uniform(0.7, 1.6),
    heatLossWPerK: random.uniform(0.3, 1),
    metresPerRadian: wish.speedMetresPerS / shaftRadiansPerS,
    gearEfficiency: random.uniform(0.35, 0.6),
    loadShare: wish.loadShare,
    texture: drawTexture(random, wish.roughness),
    toothRipple: random.uniform(0.003, 0.02),
    turnRipple: random.uniform(0.003, 0.025),
    gearPhase: random.uniform(0, 2 * Math.PI),
  };
}

/** Newtons at the rack while the motor takes the given current at steady speed. */
function forceAtCurrent(motor: SideMotor, amps: number): number {
  return (motor.fluxConstant * (amps - motor.noLoadAmps) * motor.gearEfficiency) / motor.metresPerRadian;
}

function drawFacts(random: Random, options: DrawRoomOptions): Omit<RoomFacts, 'ratedAmps'> {
  const drive =
    options.drive ?? random.pick(['in-wall', 'in-wall', 'through-frame', 'cable', 'other'] as const);
  return {
    name: options.name ?? `Room ${random.integer(100, 999)}`,
    drive,
    sides: options.sides ?? (drive === 'in-wall' ? random.pick(SIDE_NAMES) : ['main']),
    travelMetres: options.travelMetres ?? Math.round(random.uniform(0.3, 1.1) * 100) / 100,
    gearTeeth: options.gearTeeth ?? random.integer(12, 20),
    rackPitchMm: options.rackPitchMm ?? random.integer(8, 16) / 2,
    nominalVolts: 12,
    positiveDirection: random.chance(0.85) ? 'extend' : 'retract',
  };
}

/** A room of its own kind, drawn wide: every quantity that matters differs from room to room. */
export function drawRoom(seed: number, options: DrawRoomOptions = {}): SimulatedRoom {
  const random = new Random(seed);
  const shape = random.fork();
  const facts = drawFacts(shape, options);
  const count = facts.sides.length;
  const amps = options.runningAmps ?? (count > 1 ? random.logUniform(2, 12) : random.logUniform(8, 30));
  const stallRatio = Math.min(random.uniform(3, 8), GREATEST_STALL_AMPS / amps);
  const strokeS = options.strokeS ?? random.logUniform(8, 60);
  const speedMetresPerS = facts.travelMetres / strokeS;

  const unevenness = facts.sides.map(() => 1 + random.normal(0, 0.08));
  const sum = unevenness.reduce((total, value) => total + value, 0);
  const roughness = random.uniform(0.015, 0.08);
  const motors = unevenness.map((value) => {
    const loadShare = value / sum;
    return drawMotor(random, {
      // The sides' motors are of one make; the one with more to move takes more.
      runningAmps: amps * loadShare * count,
      stallAmps: amps * stallRatio,
      speedMetresPerS,
      loadShare,
      roughness,
    });
  });
  const runningAmps = motors.map((motor) => amps * motor.loadShare * count);
  const forceN = motors.reduce((total, motor, side) => total + forceAtCurrent(motor, runningAmps[side]), 0);
  const shares = motors.map((motor, side) => forceAtCurrent(motor, runningAmps[side]) / forceN);
  const massKg = forceN / (9.81 * random.uniform(0.14, 0.3));
  const rateHz = options.rateHz ?? random.pick(SAMPLE_RATES);
  const stallAmps = amps * stallRatio;
  const signed = random.chance(0.7);
  const ranges = CLAMP_RANGES.filter((range) => range > stallAmps * 1.15);
  return {
    facts: { ...facts, ratedAmps: random.chance(0.6) ? Math.ceil(amps * random.uniform(1.3, 1.7)) : null },
    motors: motors.map((motor, side) => ({ ...motor, loadShare: shares[side] })),
    load: {
      forceN,
      viscousPart: random.uniform(0.1, 0.35),
      speedMetresPerS,
      retractFactor: random.uniform(0.85, 1.25),
      massKg,
      coldStiffeningC: random.uniform(30, 80),
      coldFrictionPerC: random.uniform(0, 0.003),
      sealPart: random.uniform(0.25, 0.9),
      sealMetres: random.uniform(0.015, 0.05),
    },
    control: {
      skewNPerMetre: random.logUniform(2, 10) * forceN,
      skewPlayMetres: random.uniform(0.02, 0.06),
      stepGainPerMetre: random.uniform(20, 60),
      stopGiveMetres: random.uniform(0.001, 0.004),
      stallS: random.uniform(0.2, 1),
      timeoutS: 4 * strokeS + 20,
    },
    logging: {
      rateHz,
      noiseAmps: options.noiseAmps ?? random.logUniform(0.01, 0.4),
      stepAmps: random.pick([0.01, 0.02, 0.05, 0.1]),
      rangeAmps: random.pick(ranges),
      supplyRateHz:
        options.supplyRateHz !== undefined
          ? options.supplyRateHz
          : random.chance(0.6)
            ? random.pick([5, 10, rateHz])
            : null,
      sendsAmbient: random.chance(0.6),
      signed,
      sendsDirection: !signed || random.chance(0.8),
      scales: motors.map(() => 1 + random.normal(0, 0.015)),
      form: random.chance(0.8) ? 'rate' : 'times',
      unit: random.chance(0.6) ? 'amps' : 'milliamps',
    },
    battery: { ohms: random.uniform(0.006, 0.022), capacityAh: random.uniform(80, 300) },
    runningAmps,
  };
}
