import { DIRECTIONS, type Direction, type RoomDescription } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import { type EndsBy, type ForcesClamp, type ForcesRoom, type ForcesSide, USUAL_VOLTS } from './room.ts';

const KNOTS = 9;
const RANGES_AMPS = [20, 30, 50, 75, 100, 150, 200, 300];

/** A room drawn as wide as rooms are; `needsSides`: two motors, or one or two as it comes. */
export function drawForcesRoom(random: Random, needsSides: 1 | 2): ForcesRoom {
  const two = needsSides === 2 || random.chance(0.5);
  const amps = two ? random.logUniform(2, 12) : random.logUniform(8, 30);
  const retract = random.logUniform(0.7, 1.4);
  const travelS = random.logUniform(8, 60);
  const runningAmps = (two ? [random.logUniform(0.88, 1.13), 1] : [1]).map((part) => ({
    extend: amps * part,
    retract: amps * part * retract,
  }));
  const stallTimes = random.uniform(3, 8);
  const sides = runningAmps.map((own) => drawSide(random, own, stallTimes, travelS));
  const total = runningAmps.reduce((sum, own) => sum + Math.max(own.extend, own.retract), 0);
  const turn = random.uniform(0.05, 0.22);
  const endsBy: EndsBy = random.pick(['end-stop', 'end-stop', 'end-stop', 'switch', 'user']);
  return {
    facts: drawFacts(random, two, runningAmps, turn),
    sides,
    runningAmps,
    travelS,
    usualSpeed: 1 / travelS,
    turn,
    trim: two && random.chance(0.6) ? random.uniform(5, 20) : 0,
    boxAmps: amps * random.uniform(0.01, 0.06),
    seal: { part: random.uniform(0, 0.5), width: random.uniform(0.01, 0.05) },
    slack: !two && random.chance(0.4) ? random.uniform(0.005, 0.03) : 0,
    endGives: random.uniform(0.002, 0.008),
    endsBy,
    stallS: random.uniform(0.3, 1.2),
    supplyOhms: random.uniform(0.15, 0.8) / total,
    coldCoulomb: random.uniform(0.001, 0.005),
    coldViscous: random.uniform(0.01, 0.035),
    wander: {
      memory: random.uniform(0.2, 0.95),
      room: random.uniform(0.006, 0.022),
      side: random.uniform(0.003, 0.012),
    },
    clamps: sides.map((side, index) => drawClamp(random, runningAmps[index], USUAL_VOLTS / side.ohms)),
    recorded:
      two && needsSides === 1 && random.chance(0.12) ? [random.integer(0, 1)] : sides.map((_, i) => i),
    rateHz: random.pick([10, 12.5, 20, 25, 40, 50, 100, 125, 200]),
    restS: random.pick([
      { before: 0.6, after: 0.6 },
      { before: 1.5, after: 1 },
      { before: 0.4, after: 0 },
      { before: 0, after: 0.5 },
      { before: 0, after: 0 },
    ]),
    supply: random.chance(0.6)
      ? { rateHz: random.pick([2, 5, 10]), stepVolts: random.pick([0.01, 0.05]) }
      : null,
    sendsAmbient: random.chance(0.6),
    signed: random.chance(0.5),
    timed: random.chance(0.25) ? 'times' : 'rate',
  };
}

function drawSide(
  random: Random,
  running: Readonly<Record<Direction, number>>,
  stallTimes: number,
  travelS: number,
): ForcesSide {
  const most = Math.max(running.extend, running.retract);
  const mean = (running.extend + running.retract) / 2;
  const ohms = USUAL_VOLTS / (most * stallTimes);
  const backVoltS = (USUAL_VOLTS - mean * ohms) * travelS;
  const idleAmps = mean * random.uniform(0.08, 0.2);
  const viscousAmps = (mean - idleAmps) * random.uniform(0.05, 0.3);
  const coulombOf = (direction: Direction) => {
    const level = running[direction] - idleAmps - viscousAmps;
    return drawKnots(random, random.uniform(0.02, 0.15)).map((knot) => level * knot);
  };
  return {
    ohms,
    henries: ohms * random.logUniform(0.002, 0.02),
    backVoltS,
    inertia: (random.logUniform(0.03, 0.2) * backVoltS) / ohms,
    idleAmps,
    coulombAmps: { extend: coulombOf('extend'), retract: coulombOf('retract') },
    viscousAmps,
    stribeck: { part: random.uniform(0, 0.4), speedPart: random.uniform(0.05, 0.3) },
    toothRipple: random.uniform(0, 0.03),
    turnRipple: random.uniform(0, 0.025),
    phase: random.uniform(0, 2 * Math.PI),
  };
}

/** A random walk about 1 whose mean is 1. */
function drawKnots(random: Random, spread: number): number[] {
  let level = 0;
  const knots = Array.from({ length: KNOTS }, () => {
    level = 0.6 * level + random.normal(0, 0.8 * spread);
    return level;
  });
  const mean = knots.reduce((sum, knot) => sum + knot, 0) / KNOTS;
  return knots.map((knot) => Math.max(0.5, 1 + knot - mean));
}

function drawClamp(
  random: Random,
  running: Readonly<Record<Direction, number>>,
  stallAmps: number,
): ForcesClamp {
  const least = Math.min(...DIRECTIONS.map((direction) => running[direction]));
  const rangeAmps = RANGES_AMPS.find((range) => range > 1.3 * stallAmps) ?? 400;
  // A converter so coarse that a step is more than a twelfth of the running current is not what one buys.
  const bits = [8, 9, 10, 11, 12].filter((bit) => (2 * rangeAmps) / 2 ** bit < least / 12);
  return {
    rangeAmps,
    bits: bits.length > 0 ? random.pick(bits) : 12,
    whiteAmps: random.logUniform(0.01, Math.min(0.4, least / 8)),
    pinkAmps: random.uniform(0, 0.012) * least,
    hum: {
      amps: random.chance(0.4) ? random.uniform(0, 0.04) * least : 0,
      hertz: random.pick([50, 60, 100]),
    },
    zeroAmps: random.normal(0, 0.15),
    remanenceAmps: random.uniform(0, 0.01) * least,
    gain: random.uniform(0.97, 1.03),
  };
}

function drawFacts(
  random: Random,
  two: boolean,
  running: readonly Readonly<Record<Direction, number>>[],
  turn: number,
): RoomDescription {
  const most = Math.max(...running.flatMap((own) => [own.extend, own.retract]));
  const travelMetres = random.uniform(0.3, 1.2);
  const knowsGear = random.chance(0.5);
  const gearTeeth = random.integer(12, 20);
  return {
    drive: two
      ? random.pick(['in-wall', 'in-wall', 'cable'])
      : random.pick(['through-frame', 'cable', 'other']),
    sides: two ? ['front', 'rear'] : ['main'],
    travelMetres: knowsGear || random.chance(0.5) ? travelMetres : null,
    gearTeeth: knowsGear ? gearTeeth : null,
    rackPitchMm: knowsGear ? (1000 * turn * travelMetres) / gearTeeth : null,
    ratedAmps: random.chance(0.55) ? Math.ceil(most * random.uniform(1.25, 1.6)) : null,
    nominalVolts: 12,
    positiveDirection: 'extend',
  };
}
