import type { Direction } from '../../../analysis/trace.ts';
import type { Condition } from './condition.ts';
import { filmStiffness } from './filmStiffness.ts';
import { loadTable } from './loadTable.ts';
import { TRAVEL_BINS, type WormRoom } from './room.ts';
import { drivingEffort, flankFriction, holdingEffort } from './screw.ts';

/** Currents and the supply's voltage in even steps from the moment at which the motors get voltage. */
export interface DrivenStroke {
  readonly stepS: number;
  readonly steps: number;
  readonly amps: readonly Float64Array[];
  readonly volts: Float64Array;
  /** Winding above ambient at the end, of the warmest side. */
  readonly warmC: number;
  /** Whether every side came to where the stroke was to end. */
  readonly arrived: boolean;
}

const COPPER_PER_DEGREE = 0.00393;
/** Ferrite loses flux as it warms. */
const MAGNET_PER_DEGREE = -0.0018;
/** A controller takes a motor for stalled below this part of its running speed. */
const STALLED_PART = 0.06;
/** What a frame carries from side to side before it gives way in its joints, a part of the running push. */
const MOST_SHARED = 0.1;
/** People give up after so many times the usual stroke. */
const PATIENCE = 3;

interface MovingSide {
  readonly load: Float64Array;
  readonly ohm20: number;
  readonly newtonsPerAmp: number;
  readonly wayMetres: number;
  metres: number;
  turned: number;
  speed: number;
  amps: number;
  warmC: number;
  stalledS: number;
  /** With the motors of the other sides off, under voltage no more. */
  off: boolean;
}

/** Solves the motors of a room through one stroke: `dv/dt` implicit in the back voltage, the rest as of the last step. */
export function driveStroke(room: WormRoom, direction: Direction, condition: Condition): DrivenStroke {
  const stepS = Math.max(...room.logger.rateHz) > 100 ? 0.005 : 0.01;
  const most = Math.ceil((room.strokeS * PATIENCE + 4) / stepS);
  const volts = new Float64Array(most);
  const amps = room.sides.map(() => new Float64Array(most));
  const usual = room.travelMetres / room.strokeS;
  const stiffness = filmStiffness(room, condition.ambientC);
  const moving = room.sides.map((side, at): MovingSide => {
    const { winding, magnets, addedWayMetres } = condition.sides[at];
    return {
      load: loadTable(side, direction, condition.sides[at], stiffness),
      ohm20: side.motor.ohm * winding,
      newtonsPerAmp: side.motor.newtonsPerAmp * magnets,
      wayMetres: condition.to * room.travelMetres + addedWayMetres,
      metres: condition.from * room.travelMetres,
      turned: -side.playMetres,
      speed: 0,
      amps: 0,
      warmC: condition.warmC,
      stalledS: 0,
      off: false,
    };
  });
  const startMetres = condition.from * room.travelMetres;
  const pauseMetres =
    condition.pause === null
      ? Number.POSITIVE_INFINITY
      : startMetres + condition.pause.at * (condition.to - condition.from) * room.travelMetres;
  let pausedS = 0;
  let poweredS = 0;
  let step = 0;
  for (; step < most; step++) {
    let totalAmps = 0;
    for (const side of moving) totalAmps += side.amps;
    const bus = condition.openVolts - (room.wiring.ohm + condition.addedOhm) * totalAmps;
    volts[step] = bus;
    const resting =
      condition.pause !== null && pausedS < condition.pause.forS && moving[0].metres >= pauseMetres;
    if (resting) {
      pausedS += stepS;
      poweredS = 0;
    } else poweredS += stepS;
    let hindmost = Number.POSITIVE_INFINITY;
    for (const side of moving) if (!arrived(side) && side.metres < hindmost) hindmost = side.metres;
    for (let at = 0; at < moving.length; at++) {
      const side = moving[at];
      const { motor, runNewtons } = room.sides[at];
      if (side.off || resting) {
        side.amps = 0;
        side.speed = 0;
        amps[at][step] = 0;
        continue;
      }
      const ramp = room.controller.softStartS;
      const duty =
        (ramp > 0 && poweredS < ramp ? 0.25 + (0.75 * poweredS) / ramp : 1) *
        (1 - Math.min(0.45, room.controller.trimPerMetre * Math.max(0, side.metres - hindmost)));
      const celsius = condition.ambientC + side.warmC;
      const ohm = side.ohm20 * (1 + COPPER_PER_DEGREE * (celsius - 20));
      const constant = side.newtonsPerAmp * (1 + MAGNET_PER_DEGREE * (celsius - 20));
      const friction = flankFriction(motor.screw, side.speed, 0.7 + 0.3 * stiffness);
      let push =
        side.turned < 0 ? 0 : runNewtons * loadAt(side.load, side.metres / room.travelMetres, direction);
      if (moving.length > 1) {
        const other = moving[1 - at];
        if (!arrived(other) && !arrived(side) && !condition.sides[0].loose && !condition.sides[1].loose) {
          const lead = side.metres - other.metres;
          const beyond = Math.abs(lead) - room.frame.playMetres;
          if (beyond > 0) {
            const part = Math.min(MOST_SHARED, room.frame.partPerMetre * beyond);
            push += Math.sign(lead) * part * runNewtons;
          }
        }
      }
      const past = side.metres - side.wayMetres;
      const atStop = condition.stalls && past > 0 && !condition.sides[at].loose;
      if (atStop) {
        const stallNewtons = (constant * condition.openVolts) / ohm / drivingEffort(motor.screw, friction);
        push += (stallNewtons * past) / room.stopGivesMetres;
      }
      const effort =
        push * (push >= 0 ? drivingEffort(motor.screw, friction) : -holdingEffort(motor.screw, friction));
      const braked = poweredS <= room.controller.brakeS;
      const idle = motor.idleAmps * (0.8 + 0.2 * stiffness);
      const inertia = motor.massKg / stepS;
      const torqueVolts = (constant * duty * bus) / ohm;
      const next =
        (inertia * side.speed + torqueVolts - constant * idle - effort) /
        (inertia + (constant * constant) / ohm);
      side.speed = braked ? 0 : Math.max(0, next);
      side.amps = Math.max(0, (duty * bus - constant * side.speed) / ohm);
      side.warmC += (side.amps * side.amps * ohm * stepS) / motor.joulesPerDegree;
      if (side.turned < 0) side.turned += side.speed * stepS;
      else side.metres += side.speed * stepS * condition.sides[at].grip;
      if (!condition.stalls) side.off = past >= 0;
      else if (atStop && side.speed < STALLED_PART * usual) side.stalledS += stepS;
      amps[at][step] = side.amps;
    }
    if (endStalled(moving, condition, room.controller.stops)) {
      step++;
      break;
    }
  }
  return {
    stepS,
    steps: step,
    amps,
    volts,
    warmC: Math.max(...moving.map(({ warmC }) => warmC)),
    arrived: moving.every(({ off }) => off),
  };
}

/** At its own end, where it waits for nobody and nobody for it. */
function arrived({ off, metres, wayMetres }: MovingSide): boolean {
  return off || metres >= wayMetres;
}

/** Turns off what has stalled long enough, and a loose drive with the rest; true: nothing runs any more. */
function endStalled(moving: MovingSide[], condition: Condition, stops: 'each' | 'last'): boolean {
  let running = 0;
  let unstalled = 0;
  for (let at = 0; at < moving.length; at++) {
    if (!condition.sides[at].loose && moving[at].stalledS < condition.holdS) unstalled++;
  }
  for (let at = 0; at < moving.length; at++) {
    const side = moving[at];
    if (condition.stalls) {
      const stalled = !condition.sides[at].loose && side.stalledS >= condition.holdS;
      if (unstalled === 0 || (stops === 'each' && stalled)) side.off = true;
    }
    if (!side.off) running++;
  }
  return running === 0;
}

function loadAt(load: Float64Array, way: number, direction: Direction): number {
  const position = direction === 'extend' ? way : 1 - way;
  const bin = Math.max(0, Math.min(TRAVEL_BINS - 1, Math.floor(position * TRAVEL_BINS)));
  return load[bin];
}
