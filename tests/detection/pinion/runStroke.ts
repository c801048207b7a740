import type { Direction } from '../../../analysis/trace.ts';
import type { StrokeCondition } from './condition.ts';
import { loadTable, PLACES } from './loadTable.ts';
import type { Rest, Run } from './motion.ts';
import type { Plant } from './plant.ts';
import { beginSwitching } from './switching.ts';

/** Longest step of the integration, seconds. */
const LONGEST_STEP_S = 0.004;
/** Of copper, for each kelvin; of ferrite magnets. */
const COPPER_PER_K = 0.00393;
const FERRITE_PER_K = -0.0019;
/** Between two looks of the controller. */
const LOOK_S = 0.005;
/** How far a stop yields under a stalled motor, of ropes more. */
const STOP_METRES = 0.003;
/** In which an unpowered worm stands. */
const HOLD_S = 0.02;
/** Nobody holds the switch longer than this many usual strokes. */
const PATIENCE = 1.9;
/** Smaller speeds have no direction, metres a second over usual speed. */
const CREEP = 0.003;

/**
 * One stroke, integrated over time: winding current, speed and place of each side, the friction that takes up over some
 * millimetres (Dahl 1968), stops as springs, the supply that sags, windings and magnets that warm. `rest` goes on with it.
 */
export function runStroke(plant: Plant, stroke: StrokeCondition, direction: Direction, rest: Rest): Run {
  const towards = direction === 'extend' ? 1 : -1;
  const { travelMetres, logger } = plant;
  const count = plant.sides.length;
  const usualSpeed = travelMetres / plant.strokeS;
  const longest = plant.strokeS * PATIENCE + stroke.pauses.reduce((sum, { lastS }) => sum + lastS, 0);
  const switching = beginSwitching(plant, stroke, towards, longest);
  const inner = Math.ceil(1 / stroke.rateHz / LONGEST_STEP_S);
  const step = 1 / stroke.rateHz / inner;

  const tables = plant.sides.map((side, i) => loadTable(plant, side, stroke, stroke.sides[i]));
  const constants = plant.sides.map(({ motor }, i) => {
    const { magnetFactor } = stroke.sides[i];
    return motor.voltsPerSpeed * magnetFactor;
  });
  const amps = new Float64Array(count);
  const speeds = new Float64Array(count);
  const sliding = new Float64Array(count);
  const travelled = new Float64Array(count);
  const ohms = new Float64Array(count);
  const newtonsPerAmp = new Float64Array(count);
  const volts = new Float64Array(count);
  const yields = new Float64Array(count);
  const settle = new Float64Array(count);
  const { metres } = rest;

  const taken: Run = { amps: plant.sides.map(() => []), volts: [], seconds: 0 };
  const sums = new Float64Array(count);
  const thick = plant.sides.map(
    ({ geometry, newtons }) => (geometry.viscous * stroke.viscousFactor * newtons) / usualSpeed,
  );
  const sight = { seconds: 0, metres, speeds, amps };
  const lookEvery = Math.max(1, Math.round(LOOK_S / step));
  let sumVolts = 0;
  let filled = 0;
  let seconds = -logger.beforeS;
  let supplyVolts = stroke.openVolts;
  let overAt = Number.POSITIVE_INFINITY;
  let steps = 0;

  while (seconds < overAt + (overAt === Number.POSITIVE_INFINITY ? 0 : Math.max(logger.afterS, 0))) {
    if (steps++ % 64 === 0) warm(step * 64);
    const powered = seconds >= 0 && seconds < overAt;
    if (powered) {
      sight.seconds = seconds;
      if (steps % lookEvery === 0) switching.look(sight);
      if (switching.isOver && overAt === Number.POSITIVE_INFINITY) overAt = seconds + step;
    }
    let drawn = 0;
    for (let i = 0; i < count; i++) {
      const own = stroke.sides[i];
      const motor = plant.sides[i].motor;
      const sparks = isSparking(own.sparks, seconds);
      const duty = powered && !sparks ? switching.duties[i] : null;
      moveCurrent(i, duty, motor.brushVolts, sparks);
      if (duty !== null) drawn += Math.max(0, duty * towards * amps[i]);
      moveSide(i, powered && switching.duties[i] !== null, motor.idleAmps, motor.kilograms);
    }
    for (const { fromS, toS, amps: other } of stroke.others)
      if (seconds >= fromS && seconds < toS) drawn += other;
    const { changeover } = stroke;
    const open = changeover !== null && seconds > changeover.atS ? changeover.openVolts : stroke.openVolts;
    supplyVolts += 0.5 * (open - stroke.supplyOhms * drawn - supplyVolts);
    take();
    seconds += step;
  }
  for (let i = 0; i < count; i++) {
    const { loose } = stroke.sides[i];
    if (loose !== null && loose.to - loose.from >= 1) metres[i] = metres[1 - i];
  }
  return { ...taken, seconds: seconds + logger.beforeS };

  function warm(elapsedS: number): void {
    for (let i = 0; i < count; i++) {
      const { motor } = plant.sides[i];
      const own = stroke.sides[i];
      const heat = amps[i] ** 2 * ohms[i] * motor.kelvinPerJoule * elapsedS;
      const given = ((rest.windingK[i] - rest.housingK[i]) * elapsedS) / motor.windingS;
      rest.windingK[i] += heat - given;
      rest.housingK[i] += given * 0.12 - (rest.housingK[i] * elapsedS) / motor.housingS;
      const windingC = stroke.ambientC + rest.windingK[i];
      const magnetC = stroke.ambientC + rest.housingK[i];
      ohms[i] = motor.ohms * own.windingFactor * (1 + COPPER_PER_K * (windingC - 20)) + own.contactOhms;
      volts[i] = constants[i] * (1 + FERRITE_PER_K * (magnetC - 20));
      newtonsPerAmp[i] = volts[i] * motor.efficiency;
      settle[i] = 1 - Math.exp((-step * ohms[i]) / motor.henries);
      const stall = (stroke.openVolts / ohms[i]) * newtonsPerAmp[i];
      yields[i] = stall / (STOP_METRES + plant.takeUpMetres);
    }
  }

  function moveCurrent(i: number, duty: number | null, brushVolts: number, isBroken: boolean): void {
    if (duty === null) {
      const goal = plant.controller.shorts && !isBroken ? (-volts[i] * speeds[i]) / ohms[i] : 0;
      amps[i] += (goal - amps[i]) * settle[i];
      return;
    }
    const pushed = duty * towards * supplyVolts - volts[i] * speeds[i];
    const left = Math.abs(pushed) < brushVolts ? 0 : pushed - Math.sign(pushed) * brushVolts;
    amps[i] += (left / ohms[i] - amps[i]) * settle[i];
  }

  function moveSide(i: number, isPowered: boolean, idleAmps: number, kilograms: number): void {
    if (!isPowered) {
      // A worm is not driven back: what is off stands.
      speeds[i] *= Math.exp(-step / HOLD_S);
      metres[i] += speeds[i] * step;
      return;
    }
    const place = Math.max(0, Math.min(PLACES - 1, Math.round((metres[i] / travelMetres) * (PLACES - 1))));
    const isLoose = looseAt(i, place);
    const otherLoose = count > 1 && looseAt(1 - i, place);
    const carried = isLoose ? 0 : otherLoose ? 1.1 : 1;
    const other = otherLoose ? tables[1 - i] : null;
    const speed = speeds[i];
    const seen = Math.max(-1, Math.min(1, speed / (CREEP * usualSpeed)));
    const idle = newtonsPerAmp[i] * idleAmps;
    const stuck = travelled[i] < 0.004 ? stroke.stuck * plant.sides[i].newtons : 0;
    const slides = carried * (tables[i].sliding[place] + stuck) + (other?.sliding[place] ?? 0) * 1.1 + idle;
    const taking = Math.min(1, (Math.abs(speed) * step) / plant.takeUpMetres);
    sliding[i] += (slides * seen - sliding[i]) * taking;
    const pushes = carried * (tables[i].pushing[place] + thick[i] * speed) + (other?.pushing[place] ?? 0);
    const stop = isLoose ? 0 : stopForce(i);
    const coupling =
      count > 1 && !isLoose && !otherLoose ? plant.couplingNewtonsPerMetre * (metres[i] - metres[1 - i]) : 0;
    const force = newtonsPerAmp[i] * amps[i] - sliding[i] - pushes - stop - coupling;
    speeds[i] += (force / kilograms) * step;
    if (speeds[i] * amps[i] < 0) speeds[i] *= Math.exp(-step / HOLD_S);
    // With its gear loose this edge of the room goes with the other; a controller that counts still counts its own turns.
    const edge = isLoose && plant.controller.stepGain === 0 ? speeds[1 - i] : speeds[i];
    metres[i] += edge * step;
    travelled[i] += Math.abs(speeds[i]) * step;
  }

  function stopForce(i: number): number {
    const wall = stroke.block === null ? null : stroke.block * travelMetres;
    const far = wall !== null && towards === 1 ? wall : travelMetres;
    const near = wall !== null && towards === -1 ? wall : 0;
    const into = metres[i] > far ? metres[i] - far : metres[i] < near ? metres[i] - near : 0;
    if (into === 0) return 0;
    const damping = into * speeds[i] > 0 ? 0.05 * (speeds[i] / usualSpeed) * yields[i] * STOP_METRES : 0;
    return yields[i] * into + damping;
  }

  function looseAt(i: number, place: number): boolean {
    const { loose } = stroke.sides[i];
    return loose !== null && place >= loose.from * (PLACES - 1) && place <= loose.to * (PLACES - 1);
  }

  function take(): void {
    for (let i = 0; i < count; i++) sums[i] = logger.averages ? sums[i] + amps[i] / inner : amps[i];
    sumVolts += supplyVolts / inner;
    if (++filled < inner) return;
    for (let i = 0; i < count; i++) taken.amps[i].push(sums[i]);
    taken.volts.push(sumVolts);
    sums.fill(0);
    sumVolts = 0;
    filled = 0;
  }
}

function isSparking(sparks: readonly { atS: number; lastS: number }[], seconds: number): boolean {
  for (const { atS, lastS } of sparks) if (seconds >= atS && seconds < atS + lastS) return true;
  return false;
}
