import type { StrokeCondition } from './condition.ts';
import { copperFactor } from './copper.ts';
import { loadTables } from './loadTable.ts';
import { type MovingSide, stepCurrent, stepHeat, stepMotion } from './movingSide.ts';
import { opposingForce } from './opposingForce.ts';
import type { SimulatedRoom } from './room.ts';
import { strokeCourse } from './strokeCourse.ts';
import { StrokeTape } from './strokeTape.ts';
import { type Supply, terminalVolts } from './supply.ts';

const STEP_S = 0.002;
const GRAVITY = 9.81;
const STANDSTILL_PART = 0.04;
/** No stall is looked for while the motor is getting up to speed. */
const START_GRACE_S = 0.6;
const RUN_OUT_S = 0.2;
/** A controller that holds a side back never takes more than this part of its voltage. */
const LEAST_DUTY = 0.5;

/** What happened to one side, seconds from the moment the switch was pressed. */
interface SideEvents {
  /** When the side met its end stop (or what stood in the way); null: it never did. */
  readonly stopS: number | null;
  /** When its motor was switched off for good. */
  readonly offS: number;
}

/** The stroke as it was, in even steps of time from the moment the switch was pressed. */
export interface DrivenStroke {
  readonly stepS: number;
  readonly steps: number;
  /** Amperes in each motor, never negative. */
  readonly amps: readonly Float64Array[];
  /** Position of each side, 0 fully retracted to 1 fully extended. */
  readonly positions: readonly Float64Array[];
  readonly volts: Float64Array;
  readonly events: readonly SideEvents[];
  readonly pauses: readonly { readonly fromS: number; readonly toS: number }[];
}

function createSides(room: SimulatedRoom, condition: StrokeCondition, heading: number): MovingSide[] {
  const { motors, load, control, facts } = room;
  const tables = loadTables(room, condition);
  const slopeN = load.massKg * GRAVITY * Math.sin((condition.tiltDegrees * Math.PI) / 180) * heading;
  return motors.map((motor, side) => {
    const stallAmps = facts.nominalVolts / (motor.windingOhms + motor.wireOhms);
    const stallN = (motor.fluxConstant * stallAmps * motor.gearEfficiency) / motor.metresPerRadian;
    return {
      motor,
      wireOhms: motor.wireOhms * copperFactor(condition.ambientC),
      table: tables[side],
      slopeN: slopeN * motor.loadShare,
      stopNPerMetre: stallN / control.stopGiveMetres,
      amps: 0,
      radiansPerS: 0,
      goneMetres: 0,
      windingC: condition.ambientC,
      stalledS: 0,
      startedS: 0,
      stopS: null,
      offS: null,
    };
  });
}

/**
 * One stroke by semi-implicit time steps (Euler-Cromer; the winding's own equation implicit) of the permanent-magnet
 * motor: `V = I R + L dI/dt + K w`, `J dw/dt = K (I - I0) - load`, all sides on one supply and one room.
 */
export function driveRoom(room: SimulatedRoom, condition: StrokeCondition): DrivenStroke {
  const { load, control } = room;
  const course = strokeCourse(room, condition);
  const sides = createSides(room, condition, course.heading);
  const forceOn = opposingForce(room, condition, course);
  const voltsUnder = sinkingSupply(condition.supply);
  const expectedSteps = Math.ceil((1.5 * course.stopMetres) / load.speedMetresPerS / STEP_S) + 1000;
  const tape = new StrokeTape(sides.length, expectedSteps);
  const pauses: { fromS: number; toS: number }[] = [];
  let resumeS = 0;
  let endS: number | null = null;
  for (let now = 0; endS === null || now < endS + RUN_OUT_S; now = tape.steps * STEP_S) {
    const { totalAmps, leastMetres, meanMetres } = stateOf(sides);
    const bus = voltsUnder(totalAmps);
    tape.begin(bus);

    const nextPause = course.pauses[pauses.length];
    if (nextPause && now >= resumeS && meanMetres >= nextPause.atMetres) {
      resumeS = now + nextPause.durationS;
      pauses.push({ fromS: now, toS: resumeS });
      for (const side of sides) {
        side.startedS = resumeS;
        side.stalledS = 0;
      }
    }
    const ending = meanMetres >= course.releaseMetres || now >= control.timeoutS;

    for (let index = 0; index < sides.length; index++) {
      const side = sides[index];
      if (ending && side.offS === null) side.offS = now;
      const powered = side.offS === null && now >= resumeS;
      const duty = dutyOf(side, room, condition, leastMetres);
      stepCurrent(side, powered ? bus * condition.voltageFactors[index] * duty : null, STEP_S);
      stepMotion(side, forceOn(side, meanMetres), STEP_S);
      stepHeat(side, condition.ambientC, STEP_S);
      if (side.stopS === null && side.goneMetres > course.stopMetres) side.stopS = now;
      if (powered) switchOffStalled(side, room, now);
      tape.set(index, side.amps, Math.min(Math.max(course.positionOf(side.goneMetres), 0), 1));
    }
    if (sides.every(({ offS }) => offS !== null)) endS ??= now;
  }

  return {
    stepS: STEP_S,
    steps: tape.steps,
    amps: tape.amps.map((all) => all.subarray(0, tape.steps)),
    positions: tape.positions.map((all) => all.subarray(0, tape.steps)),
    volts: tape.volts.subarray(0, tape.steps),
    events: sides.map(({ stopS, offS }) => ({ stopS, offS: offS ?? tape.steps * STEP_S })),
    pauses,
  };
}

/** What all sides draw together, and how far the hindmost and their mean have gone. */
function stateOf(sides: readonly MovingSide[]): {
  totalAmps: number;
  leastMetres: number;
  meanMetres: number;
} {
  let totalAmps = 0;
  let leastMetres = Number.POSITIVE_INFINITY;
  let meanMetres = 0;
  for (const side of sides) {
    totalAmps += side.amps;
    meanMetres += side.goneMetres / sides.length;
    leastMetres = Math.min(leastMetres, side.goneMetres);
  }
  return { totalAmps, leastMetres, meanMetres };
}

/** The volts of a supply step by step, each under so many amperes: they sink with what has been drawn so far. */
function sinkingSupply(supply: Supply): (amps: number) => number {
  let sagAmps = 0;
  let drawnAs = 0;
  return (amps) => {
    drawnAs += amps * STEP_S;
    sagAmps += ((amps - sagAmps) * STEP_S) / supply.sagS;
    return terminalVolts(supply, amps, sagAmps, drawnAs);
  };
}

/** The part of the voltage that a controller leaves to a side which is ahead of the hindmost. */
function dutyOf(
  side: MovingSide,
  { control }: SimulatedRoom,
  condition: StrokeCondition,
  leastMetres: number,
): number {
  // A side at its stop has nobody to wait for: it stalls under the full voltage.
  if (!condition.keepsStep || side.stopS !== null) return 1;
  const lead = side.goneMetres - leastMetres;
  return Math.max(1 - control.stepGainPerMetre * lead, LEAST_DUTY);
}

/** Switches a side off once it has stood still under power for as long as the controller lets it. */
function switchOffStalled(side: MovingSide, { load, control }: SimulatedRoom, now: number): void {
  if (now - side.startedS <= START_GRACE_S) return;
  const metresPerS = side.radiansPerS * side.motor.metresPerRadian;
  side.stalledS = metresPerS < STANDSTILL_PART * load.speedMetresPerS ? side.stalledS + STEP_S : 0;
  if (side.stalledS >= control.stallS) side.offS = now;
}
