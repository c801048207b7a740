import type { Drive } from '../../../analysis/trace.ts';
import { drawCourse, drawTrack } from './course.ts';
import type { Random } from './random.ts';
import type { Controller, Logger, Motor, Places, RecorderRoom, Scatter } from './room.ts';

const ONE_SIDE = [['main'], ['main'], ['motor'], ['centre']] as const;
const TWO_SIDES = [
  ['front', 'rear'],
  ['front', 'rear'],
  ['left', 'right'],
  ['A', 'B'],
] as const;

/** Draws a healthy room of any drive; parameters lie as wide as those of motors that were recorded. */
export function drawRoom(random: Random): RecorderRoom {
  const drive = random.pick<Drive>([
    'in-wall',
    'in-wall',
    'in-wall',
    'in-wall',
    'through-frame',
    'through-frame',
    'through-frame',
    'cable',
    'cable',
    'other',
    'other',
  ]);
  const two = drive === 'in-wall' || (drive !== 'through-frame' && random.chance(0.4));
  const sides = two ? random.pick(TWO_SIDES) : random.pick(ONE_SIDE);
  const durationS = random.scaled(8, 60);
  const travelMetres = Math.min(1.3, Math.max(0.45, (durationS * random.scaled(14, 50)) / 1000));
  const gearTeeth = random.whole(8, 20);
  const rackPitchMm = random.pick([5, 6.35, 7.85, 9.42, 12.7]);
  const motors = drawMotors(two, random);
  const controller = drawController(motors, random);
  const tellsGear = drive === 'in-wall' ? random.chance(0.85) : random.chance(0.4);
  const track = drawTrack(random);
  const courses = {
    extend: motors.map(() => drawCourse(track, random)),
    retract: motors.map(() => drawCourse(track, random)),
  };
  const heavier = random.scaled(0.78, 1.28);
  for (const course of courses.retract) for (let at = 0; at < course.length; at++) course[at] *= heavier;
  return {
    facts: {
      drive,
      sides,
      travelMetres: random.chance(0.8) ? Math.round(1000 * travelMetres) / 1000 : null,
      gearTeeth: tellsGear ? gearTeeth : null,
      rackPitchMm: tellsGear ? rackPitchMm : null,
      ratedAmps: random.chance(0.5)
        ? Math.ceil(
            Math.max(...motors.map((motor) => motor.runningAmps)) * heavier * random.between(1.2, 1.7),
          )
        : null,
      nominalVolts: 12,
      positiveDirection: random.chance(0.85) ? 'extend' : 'retract',
    },
    motors,
    controller,
    logger: drawLogger(motors, random),
    scatter: drawScatter(two, random),
    places: drawPlaces(motors, random),
    courses,
    durationS,
    travelMetres,
    gearTurn: (gearTeeth * rackPitchMm) / 1000 / travelMetres,
    tooth: rackPitchMm / 1000 / travelMetres,
    toothSwing: random.between(0, 0.035),
    turnSwing: random.between(0, 0.025),
    stiffness: random.between(0, 0.8),
  };
}

function drawMotors(two: boolean, random: Random): Motor[] {
  const amps = two ? random.scaled(2.4, 10.5) : random.scaled(8, 30);
  const stall = random.between(4, 8);
  const idle = random.between(0.12, 0.35);
  const runUpS = random.scaled(0.04, 0.25);
  const rotorTurns = random.scaled(120, 1200);
  const bars = random.whole(8, 24);
  const ripple = random.between(0.005, 0.05);
  const rotorSwing = random.between(0, 0.03);
  const settleS = random.scaled(0.4, 3);
  const uneven = two ? 0.16 * Math.max(-1.6, Math.min(1.6, random.normal())) : 0;
  return (two ? [1, -1] : [1]).map((way) => {
    const runningAmps = amps * Math.exp((way * uneven) / 2);
    return {
      runningAmps,
      noLoadAmps: amps * idle * (1 + 0.05 * random.normal()),
      ohms: 12.6 / (amps * stall * Math.exp(0.03 * random.normal())),
      runUpS,
      // Sides that were matched at the works run alike under their own loads.
      quickness: Math.exp(0.012 * random.normal()),
      breakaway: random.between(0, 0.35),
      settleS,
      rippleCycles: rotorTurns * bars,
      ripple,
      rotorTurns,
      rotorSwing,
    };
  });
}

function drawController(motors: readonly Motor[], random: Random): Controller {
  const start = random.pick(['relay', 'relay', 'relay', 'relay', 'ramp', 'ramp', 'pulse'] as const);
  const limited = start === 'ramp' && random.chance(0.5);
  const times = random.between(2.8, 3.4);
  const inStep = motors.length > 1 && random.chance(0.7);
  const slow = start !== 'relay' && random.chance(0.4);
  return {
    start,
    rampS: random.scaled(0.3, 1.6),
    limitAmps: motors.map((motor) => (limited ? times * motor.runningAmps : Number.POSITIVE_INFINITY)),
    slowZone: slow ? random.between(0.03, 0.1) : 0,
    slowDuty: random.between(0.65, 0.85),
    stepGain: inStep ? random.between(10, 40) : 0,
    end: random.pick(
      inStep
        ? (['controller', 'controller', 'controller', 'user', 'switch'] as const)
        : (['user', 'user', 'user', 'controller', 'switch'] as const),
    ),
  };
}

function drawLogger(motors: readonly Motor[], random: Random): Logger {
  const least = Math.min(...motors.map((motor) => motor.runningAmps));
  const noiseAmps = Math.min(random.scaled(0.01, 0.4), 0.08 * least);
  const late = random.chance(0.12);
  const rateHz = random.pick([10, 10, 20, 20, 25, 40, 50, 50, 62.5, 100, 100, 125, 200]);
  return {
    rateHz,
    noiseAmps,
    slowNoiseAmps: noiseAmps * random.between(0, 0.4),
    stepAmps: Math.min(random.pick([0.005, 0.02, 0.05, 0.05, 0.1, 0.15]), 0.04 * least),
    zeroAmps: motors.map(() => random.normal() * 0.012 * least),
    zeroAmpsPerC: random.normal() * 0.0004 * least,
    scale: motors.map(() => 1 + 0.015 * random.normal()),
    averages: random.chance(0.5),
    jitter: random.chance(0.4) ? random.between(0.01, 0.15) : 0,
    tellsTimes: random.chance(0.25),
    leadS: late ? -random.between(0.02, 0.25) : random.scaled(0.05, 1.5),
    tailS: random.chance(0.15) ? -0.2 : random.between(0, 1.2),
    supplyRateHz: random.chance(0.6) ? random.pick([1, 2, 5, 10]) : null,
    supplyStepVolts: random.pick([0.01, 0.02, 0.05, 0.1]),
    recordsAmbient: random.chance(0.6),
    roundsToMinutes: random.chance(0.3),
    signed: random.chance(0.6),
    tellsDirection: true,
    missed: random.chance(0.3) ? random.scaled(0.0005, 0.02) : 0,
  };
}

function drawScatter(two: boolean, random: Random): Scatter {
  return {
    camp: random.between(0.006, 0.026),
    stroke: random.between(0.004, 0.016),
    tilt: two ? random.between(0.003, 0.014) : 0,
    slope: random.between(0.002, 0.016),
    wander: random.between(0.006, 0.03),
    stiffening: random.between(0, 0.005),
    ageing: random.between(-0.03, 0.03),
  };
}

function drawPlaces(motors: readonly Motor[], random: Random): Places {
  const total = motors.reduce((sum, motor) => sum + motor.runningAmps, 0);
  return {
    meanC: random.between(9, 20),
    swingC: random.between(5, 12),
    anomalyC: random.between(2, 5),
    yearRound: random.chance(0.35),
    shore: random.between(0.1, 0.6),
    solar: random.between(0, 0.35),
    lineOhms: random.scaled(0.15, 0.8) / total,
  };
}
