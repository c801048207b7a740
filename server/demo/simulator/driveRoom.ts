import type { StrokeCondition } from './condition.ts';
import { copperFactor } from './copper.ts';
import { loadTables } from './loadTable.ts';
import { type MovingSide, stepCurrent, stepHeat, stepMotion } from './movingSide.ts';
import type { SimulatedRoom } from './room.ts';
import { StrokeTape } from './strokeTape.ts';
import { terminalVolts } from './supply.ts';

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

/** How far into the stroke a position lies, metres. */
function metresTo(position: number, room: SimulatedRoom, condition: StrokeCondition): number {
  return Math.abs(position - condition.startPosition) * room.facts.travelMetres;
}

/**
 * One stroke by semi-implicit time steps (Euler-Cromer; the winding's own equation implicit) of the permanent-magnet
 * motor: `V = I R + L dI/dt + K w`, `J dw/dt = K (I - I0) - load`, all sides on one supply and one room.
 */
export function driveRoom(room: SimulatedRoom, condition: StrokeCondition): DrivenStroke {
  const { load, control } = room;
  const { supply } = condition;
  const travel = room.facts.travelMetres;
  const heading = condition.direction === 'extend' ? 1 : -1;
  const sides = createSides(room, condition, heading);
  const lastCell = sides[0].table.length - 1;
  const cold = 20 - condition.ambientC;
  const dry = (1 - load.viscousPart) * Math.max(1 + load.coldFrictionPerC * cold, 0.5);
  const viscous = (load.viscousPart * Math.exp(cold / load.coldStiffeningC)) / load.speedMetresPerS;
  const stopMetres = metresTo(condition.stopPosition, room, condition);
  const releaseMetres =
    condition.releasePosition === null
      ? Number.POSITIVE_INFINITY
      : metresTo(condition.releasePosition, room, condition);
  const plannedPauses = condition.pauses
    .map((pause) => ({ atMetres: metresTo(pause.position, room, condition), durationS: pause.durationS }))
    .sort((one, other) => one.atMetres - other.atMetres);
  const pauses: { fromS: number; toS: number }[] = [];
  const tape = new StrokeTape(
    sides.length,
    Math.ceil((1.5 * stopMetres) / load.speedMetresPerS / STEP_S) + 1000,
  );

  /** All that stands against one side at this moment, newtons. */
  const forceOn = (side: MovingSide, meanMetres: number): number => {
    const position = condition.startPosition + (heading * side.goneMetres) / travel;
    const cell = Math.min(Math.max(position * lastCell, 0), lastCell - 1e-3);
    const below = cell | 0;
    const resistance = side.table[below] + (side.table[below + 1] - side.table[below]) * (cell - below);
    let force = resistance * (dry + viscous * side.radiansPerS * side.motor.metresPerRadian) + side.slopeN;
    const apart = side.goneMetres - meanMetres;
    const beyondPlay = Math.abs(apart) - control.skewPlayMetres / 2;
    if (beyondPlay > 0) force += Math.sign(apart) * beyondPlay * control.skewNPerMetre;
    const pressed = side.goneMetres - stopMetres;
    return pressed > 0 ? force + pressed * side.stopNPerMetre : force;
  };

  let sagAmps = 0;
  let drawnAs = 0;
  let resumeS = 0;
  let endS: number | null = null;
  for (let now = 0; endS === null || now < endS + RUN_OUT_S; now = tape.steps * STEP_S) {
    let total = 0;
    let leastMetres = Number.POSITIVE_INFINITY;
    let meanMetres = 0;
    for (const side of sides) {
      total += side.amps;
      meanMetres += side.goneMetres / sides.length;
      leastMetres = Math.min(leastMetres, side.goneMetres);
    }
    drawnAs += total * STEP_S;
    sagAmps += ((total - sagAmps) * STEP_S) / supply.sagS;
    const bus = terminalVolts(supply, total, sagAmps, drawnAs);
    tape.begin(bus);

    const nextPause = plannedPauses[pauses.length];
    if (nextPause && now >= resumeS && meanMetres >= nextPause.atMetres) {
      resumeS = now + nextPause.durationS;
      pauses.push({ fromS: now, toS: resumeS });
      for (const side of sides) {
        side.startedS = resumeS;
        side.stalledS = 0;
      }
    }
    const ending = meanMetres >= releaseMetres || now >= control.timeoutS;

    let running = 0;
    for (let index = 0; index < sides.length; index++) {
      const side = sides[index];
      if (ending && side.offS === null) side.offS = now;
      const powered = side.offS === null && now >= resumeS;
      // A side at its stop has nobody to wait for: it stalls under the full voltage.
      const waits = condition.keepsStep && side.stopS === null;
      const lead = side.goneMetres - leastMetres;
      const duty = waits ? Math.max(1 - control.stepGainPerMetre * lead, LEAST_DUTY) : 1;
      stepCurrent(side, powered ? bus * condition.voltageFactors[index] * duty : null, STEP_S);
      stepMotion(side, forceOn(side, meanMetres), STEP_S);
      stepHeat(side, condition.ambientC, STEP_S);
      if (side.stopS === null && side.goneMetres > stopMetres) side.stopS = now;

      if (powered && now - side.startedS > START_GRACE_S) {
        const metresPerS = side.radiansPerS * side.motor.metresPerRadian;
        side.stalledS = metresPerS < STANDSTILL_PART * load.speedMetresPerS ? side.stalledS + STEP_S : 0;
        if (side.stalledS >= control.stallS) side.offS = now;
      }
      if (side.offS === null) running++;
      const position = condition.startPosition + (heading * side.goneMetres) / travel;
      tape.set(index, side.amps, Math.min(Math.max(position, 0), 1));
    }
    if (running === 0) endS ??= now;
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
