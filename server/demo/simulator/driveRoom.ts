import type { StrokeCondition } from './condition.ts';
import { copperFactor } from './copper.ts';
import { loadTables } from './loadTable.ts';
import type { SimulatedRoom } from './room.ts';
import { terminalVolts } from './supply.ts';

const STEP_S = 0.002;
const GRAVITY = 9.81;
/** A worm gear cannot be driven backwards; what pushes the room along takes only this part off the motor's load. */
const HELP_PART = 0.3;
/** Braking of a motor that is switched off and shorted by its controller. */
const BRAKE_S = 0.03;
const STANDSTILL_PART = 0.04;
/** No stall is looked for while the motor is getting up to speed. */
const START_GRACE_S = 0.6;
const RUN_OUT_S = 0.2;

/** What happened to one side, seconds from the moment the switch was pressed. */
export interface SideEvents {
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

function grown(array: Float64Array): Float64Array {
  const longer = new Float64Array(array.length * 2);
  longer.set(array);
  return longer;
}

/**
 * One stroke by semi-implicit time steps (Euler-Cromer; the winding's own equation implicit) of the permanent-magnet
 * motor: `V = I R + L dI/dt + K w`, `J dw/dt = K (I - I0) - load`, all sides on one supply and one room.
 */
export function driveRoom(room: SimulatedRoom, condition: StrokeCondition): DrivenStroke {
  const { motors, load, control, facts } = room;
  const count = motors.length;
  const travel = facts.travelMetres;
  const tables = loadTables(room, condition);
  const cellsPerMetre = (tables[0].length - 1) / travel;
  const heading = condition.direction === 'extend' ? 1 : -1;
  const cold = 20 - condition.ambientC;
  const dry = (1 - load.viscousPart) * Math.max(1 + load.coldFrictionPerC * cold, 0.5);
  const viscous = (load.viscousPart * Math.exp(cold / load.coldStiffeningC)) / load.speedMetresPerS;
  const slopeN = load.massKg * GRAVITY * Math.sin((condition.tiltDegrees * Math.PI) / 180) * heading;
  const wire = copperFactor(condition.ambientC);
  const stopMetres = Math.abs(condition.stopPosition - condition.startPosition) * travel;
  const releaseMetres =
    condition.releasePosition === null
      ? Number.POSITIVE_INFINITY
      : Math.abs(condition.releasePosition - condition.startPosition) * travel;
  const startMetres = condition.startPosition * travel;

  let capacity = Math.ceil((1.5 * stopMetres) / load.speedMetresPerS / STEP_S) + 1000;
  const amps: Float64Array[] = motors.map(() => new Float64Array(capacity));
  const positions: Float64Array[] = motors.map(() => new Float64Array(capacity));
  let volts: Float64Array = new Float64Array(capacity);

  const current = new Float64Array(count);
  const speed = new Float64Array(count);
  const gone = new Float64Array(count);
  const heat = new Float64Array(count).fill(condition.ambientC);
  const stalledS = new Float64Array(count);
  const startedS = new Float64Array(count);
  const isOff = new Uint8Array(count);
  const stopS: (number | null)[] = motors.map(() => null);
  const offS = new Float64Array(count);
  const stopN = motors.map((motor) => {
    const stallAmps = facts.nominalVolts / (motor.windingOhms + motor.wireOhms);
    const force = (motor.fluxConstant * stallAmps * motor.gearEfficiency) / motor.metresPerRadian;
    return force / control.stopGiveMetres;
  });
  const pauses: { fromS: number; toS: number }[] = [];
  const pauseMetres = condition.pauses
    .map((pause) => ({ at: Math.abs(pause.position - condition.startPosition) * travel, ...pause }))
    .sort((one, other) => one.at - other.at);

  let sagAmps = 0;
  let drawnAs = 0;
  let resumeS = 0;
  let allOffS: number | null = null;
  let step = 0;
  for (; ; step++) {
    const now = step * STEP_S;
    if (step === capacity) {
      capacity *= 2;
      volts = grown(volts);
      for (let side = 0; side < count; side++) {
        amps[side] = grown(amps[side]);
        positions[side] = grown(positions[side]);
      }
    }
    let total = 0;
    let least = Number.POSITIVE_INFINITY;
    let mean = 0;
    for (let side = 0; side < count; side++) {
      total += current[side];
      mean += gone[side] / count;
      if (gone[side] < least) least = gone[side];
    }
    drawnAs += total * STEP_S;
    sagAmps += ((total - sagAmps) * STEP_S) / condition.supply.sagS;
    const bus = terminalVolts(condition.supply, total, sagAmps, drawnAs);
    volts[step] = bus;

    if (pauses.length < pauseMetres.length && now >= resumeS && mean >= pauseMetres[pauses.length].at) {
      resumeS = now + pauseMetres[pauses.length].durationS;
      pauses.push({ fromS: now, toS: resumeS });
      startedS.fill(resumeS);
      stalledS.fill(0);
    }
    const paused = now < resumeS;
    const ending = mean >= releaseMetres || now >= control.timeoutS;

    let running = 0;
    for (let side = 0; side < count; side++) {
      const motor = motors[side];
      if (ending && isOff[side] === 0) {
        isOff[side] = 1;
        offS[side] = now;
      }
      const windingOhms = motor.windingOhms * copperFactor(heat[side]);
      const ohms = windingOhms + motor.wireOhms * wire;
      const powered = isOff[side] === 0 && !paused;
      if (powered) {
        const lead = gone[side] - least;
        // A side at its stop has nobody to wait for: it stalls under the full voltage.
        const waits = condition.keepsStep && stopS[side] === null;
        const duty = waits ? Math.max(1 - control.stepGainPerMetre * lead, 0.5) : 1;
        const drop = bus * condition.voltageFactors[side] * duty - motor.fluxConstant * speed[side];
        const gain = STEP_S / motor.inductanceHenry;
        current[side] = Math.max((current[side] + gain * drop) / (1 + gain * ohms), 0);
      } else {
        current[side] /= 1 + (4 * STEP_S * ohms) / motor.inductanceHenry;
        if (current[side] < 1e-4) current[side] = 0;
        speed[side] *= 1 - STEP_S / BRAKE_S;
      }

      const cell = Math.min(
        Math.max((startMetres + heading * gone[side]) * cellsPerMetre, 0),
        tables[0].length - 1.001,
      );
      const below = cell | 0;
      const table = tables[side];
      const resistance = table[below] + (table[below + 1] - table[below]) * (cell - below);
      const metresPerS = speed[side] * motor.metresPerRadian;
      let force = resistance * (dry + viscous * metresPerS) + slopeN * motor.loadShare;
      const apart = gone[side] - mean;
      const beyondPlay = Math.abs(apart) - control.skewPlayMetres / 2;
      if (beyondPlay > 0) force += Math.sign(apart) * beyondPlay * control.skewNPerMetre;
      const pressed = gone[side] - stopMetres;
      if (pressed > 0) {
        force += pressed * stopN[side];
        if (stopS[side] === null) stopS[side] = now;
      }
      const loadTorque =
        (force > 0 ? force / motor.gearEfficiency : force * HELP_PART) * motor.metresPerRadian +
        motor.fluxConstant * motor.noLoadAmps;
      const torque = motor.fluxConstant * current[side] - loadTorque;
      speed[side] = Math.max(speed[side] + (STEP_S / motor.inertia) * torque, 0);
      gone[side] += speed[side] * motor.metresPerRadian * STEP_S;
      heat[side] +=
        ((current[side] * current[side] * windingOhms -
          motor.heatLossWPerK * (heat[side] - condition.ambientC)) *
          STEP_S) /
        motor.heatCapacityJPerK;

      if (powered && now - startedS[side] > START_GRACE_S) {
        const still = metresPerS < STANDSTILL_PART * load.speedMetresPerS;
        stalledS[side] = still ? stalledS[side] + STEP_S : 0;
        if (stalledS[side] >= control.stallS) {
          isOff[side] = 1;
          offS[side] = now;
        }
      }
      if (isOff[side] === 0) running++;
      amps[side][step] = current[side];
      positions[side][step] = Math.min(
        Math.max(condition.startPosition + (heading * gone[side]) / travel, 0),
        1,
      );
    }
    if (running === 0 && allOffS === null) allOffS = now;
    if (allOffS !== null && now >= allOffS + RUN_OUT_S) break;
  }

  const steps = step + 1;
  return {
    stepS: STEP_S,
    steps,
    amps: amps.map((all) => all.subarray(0, steps)),
    positions: positions.map((all) => all.subarray(0, steps)),
    volts: volts.subarray(0, steps),
    events: motors.map((_, side) => ({ stopS: stopS[side], offS: offS[side] })),
    pauses,
  };
}
