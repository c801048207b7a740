import { DIRECTIONS, type Direction, type RoomDescription } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';

/** One side's current, described as it looks and not by what makes it. */
export interface PlainSide {
  /** Running amperes at 12.6 V and 20 °C, each way. */
  readonly amps: Readonly<Record<Direction, number>>;
  /** Course over the travel about 1, retracted to extended, evenly spaced knots, each way. */
  readonly course: Readonly<Record<Direction, readonly number[]>>;
  /** Amperes of the start's peak and of the stall at 12.6 V and 20 °C. */
  readonly inrushAmps: number;
  readonly stallAmps: number;
  /** How fast the start's peak decays, seconds. */
  readonly inrushS: number;
  /** Part of the current that swings once a turn of the gear. */
  readonly ripple: number;
  readonly ripplePhase: number;
}

/** What is lasting about a room and its logger. */
export interface PlainRoom {
  readonly facts: RoomDescription;
  /** Travel of one turn of the gear, as a part of the whole, whether or not the facts tell it. */
  readonly turn: number;
  readonly sides: readonly PlainSide[];
  readonly travelS: Readonly<Record<Direction, number>>;
  /** Rise of the current for each degree colder than 20 °C, as a part. */
  readonly perDegree: number;
  /** Powers of the supply over 12.6 V that speed and running current follow. */
  readonly speedPower: number;
  readonly ampsPower: number;
  /** Slowing for each part that the current rises. */
  readonly slowing: number;
  readonly supplyOhms: number;
  /** Memory of the friction from stroke to stroke, its spread, and each side's own, natural logarithm. */
  readonly friction: { readonly memory: number; readonly spread: number; readonly sideSpread: number };
  /** Sensor noise: white, and coloured by a first-order recursion over `colouredS`; parts of an ampere. */
  readonly whiteAmps: number;
  readonly colouredAmps: number;
  readonly colouredS: number;
  readonly offsetAmps: readonly number[];
  readonly rateHz: number;
  readonly stepAmps: number;
  readonly restS: { readonly before: number; readonly after: number };
  /** The stroke ends by stalling for so long; 0: a switch ends it before any stall. */
  readonly stallS: number;
  readonly supplyRateHz: number | null;
  readonly sendsAmbient: boolean;
  readonly signed: boolean;
  readonly records: readonly Direction[];
  readonly clamps: readonly number[];
}

const KNOTS = 12;

function drawCourse(random: Random, spread: number): number[] {
  const first = random.uniform(0, 2 * Math.PI);
  const second = random.uniform(0, 2 * Math.PI);
  return Array.from({ length: KNOTS }, (_, knot) => {
    const x = knot / (KNOTS - 1);
    return 1 + spread * (Math.sin(2 * Math.PI * x + first) + 0.5 * Math.sin(6 * Math.PI * x + second));
  });
}

function drawSide(random: Random, amps: number, retract: number): PlainSide {
  const spread = random.uniform(0.01, 0.08);
  const stallTimes = random.uniform(3, 7) * Math.max(1, retract);
  return {
    amps: { extend: amps, retract: amps * retract },
    course: { extend: drawCourse(random, spread), retract: drawCourse(random, spread) },
    inrushAmps: amps * stallTimes * random.uniform(0.75, 1.05),
    stallAmps: amps * stallTimes,
    inrushS: random.logUniform(0.05, 0.25),
    ripple: random.uniform(0, 0.03),
    ripplePhase: random.uniform(0, 2 * Math.PI),
  };
}

/** A room drawn wide; `needsSides`: two motors, or one or two as it comes. */
export function drawPlainRoom(random: Random, needsSides: 1 | 2): PlainRoom {
  const two = needsSides === 2 || random.chance(0.5);
  const amps = two ? random.logUniform(2, 12) : random.logUniform(8, 30);
  const retract = random.logUniform(0.65, 1.5);
  const sides = (two ? [random.uniform(0.85, 1.15), random.uniform(0.85, 1.15)] : [1]).map((part) =>
    drawSide(random, amps * part, retract * random.uniform(0.95, 1.05)),
  );
  const extendS = random.logUniform(8, 60);
  const turn = random.uniform(0.06, 0.25);
  const travelMetres = random.uniform(0.3, 1.1);
  const knowsGear = random.chance(0.6);
  const gearTeeth = random.integer(12, 20);
  const most = Math.max(...sides.map((side) => Math.max(side.amps.extend, side.amps.retract)));
  return {
    facts: {
      drive: two ? 'in-wall' : random.pick(['through-frame', 'cable', 'other'] as const),
      sides: two ? ['front', 'rear'] : ['main'],
      travelMetres: knowsGear || random.chance(0.5) ? travelMetres : null,
      gearTeeth: knowsGear ? gearTeeth : null,
      rackPitchMm: knowsGear ? (1000 * turn * travelMetres) / gearTeeth : null,
      ratedAmps: random.chance(0.6) ? Math.ceil(most * random.uniform(1.3, 1.7)) : null,
      nominalVolts: 12,
      positiveDirection: 'extend',
    },
    turn,
    sides,
    travelS: { extend: extendS, retract: extendS * random.uniform(0.8, 1.2) },
    perDegree: random.uniform(0.003, 0.01),
    speedPower: random.uniform(0.9, 1.15),
    ampsPower: random.uniform(-0.1, 0.2),
    slowing: random.uniform(0.1, 0.4),
    supplyOhms: random.uniform(0.01, 0.05),
    friction: {
      memory: random.uniform(0.3, 0.97),
      spread: random.uniform(0.006, 0.02),
      sideSpread: random.uniform(0.003, 0.012),
    },
    whiteAmps: random.logUniform(0.01, 0.4),
    colouredAmps: random.uniform(0.002, 0.02) * amps,
    colouredS: random.uniform(0.05, 0.6),
    offsetAmps: sides.map(() => random.normal(0, 0.15)),
    rateHz: random.pick([10, 20, 25, 50, 100, 200]),
    stepAmps: random.pick([0.01, 0.05, 0.1]),
    restS: random.pick([
      { before: 0.5, after: 0.5 },
      { before: 1, after: 1 },
      { before: 0.5, after: 0 },
      { before: 0, after: 0 },
    ]),
    stallS: random.chance(0.8) ? random.uniform(0.25, 1) : 0,
    supplyRateHz: random.chance(0.6) ? 10 : null,
    sendsAmbient: random.chance(0.6),
    signed: random.chance(0.6),
    records: random.chance(0.9) ? DIRECTIONS : [random.pick(DIRECTIONS)],
    clamps: two && needsSides === 1 && random.chance(0.15) ? [0] : sides.map((_, side) => side),
  };
}
