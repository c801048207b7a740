import type { Random } from '../../../server/demo/simulator/random.ts';
import type { SideRecord, StrokeRecord } from '../../../server/demo/simulator/strokeRecord.ts';
import { readClamp } from './readClamp.ts';
import type { WindingRoom } from './room.ts';
import type { StrokeState } from './strokeState.ts';
import { STEP_S, type Tape } from './tape.ts';

/** What happened to the logger by now. */
export interface LoggerHistory {
  /** Its settings were changed to the later rate. */
  readonly hasLaterRate: boolean;
  /** Where the zero of each clamp lies now, by side. */
  readonly offsetAmps: readonly number[];
}

/** Writes one driven stroke down as the room's logger sends it. */
export function recordStroke(
  room: WindingRoom,
  state: StrokeState,
  tape: Tape,
  past: LoggerHistory,
  startedAtMs: number,
  random: Random,
): StrokeRecord {
  const { logger, facts } = room;
  const rates = past.hasLaterRate && logger.laterRateHz !== null ? logger.laterRateHz : logger.rateHz;
  const sign = logger.onMotorLead && state.direction !== facts.positiveDirection ? -1 : 1;
  const sides = facts.sides.map((side, index): SideRecord => {
    const rateHz = rates[index];
    const amps = readClamp(logger, state.sides[index].clamp, tape, index, {
      rateHz,
      sign,
      offsetAmps: past.offsetAmps[index],
      random,
    });
    if (logger.sendsTimes)
      return { side, t: stamps(amps.length, rateHz, state, logger.jitterS, random), amps };
    const told = rateHz * state.clockRate;
    if (logger.sendsMilliamps && amps.every((value) => value !== null)) {
      return { side, rateHz: told, milliamps: amps.map((value) => Math.round(value * 1000)) };
    }
    return { side, rateHz: told, amps };
  });
  return {
    ...(logger.tellsDirection ? { direction: state.direction } : {}),
    startedAt: new Date(startedAtMs).toISOString(),
    sides,
    ...(logger.supplyRateHz === null
      ? {}
      : { supply: readSupply(room, state, tape, logger.supplyRateHz, random) }),
    ...(logger.recordsAmbient
      ? { ambientC: Math.round((state.ambientC + logger.ambientOffsetC + random.normal(0, 0.3)) * 2) / 2 }
      : {}),
  };
}

/** Times as the logger's clock tells them: they tremble, and rise always. */
function stamps(
  count: number,
  rateHz: number,
  state: StrokeState,
  jitterS: number,
  random: Random,
): number[] {
  const times: number[] = [];
  let last = -1;
  for (let index = 0; index < count; index++) {
    let seconds = index / rateHz;
    for (const [at, leapS] of state.clockLeaps) if (index / rateHz > at) seconds += leapS;
    seconds = seconds / state.clockRate + random.normal(0, jitterS);
    seconds = Math.max(0, Math.round(seconds * 10000) / 10000);
    if (seconds <= last) seconds = Math.round((last + 0.0005) * 10000) / 10000;
    times.push(seconds);
    last = seconds;
  }
  return times;
}

function readSupply(room: WindingRoom, state: StrokeState, tape: Tape, rateHz: number, random: Random) {
  const { logger } = room;
  const count = Math.max(2, Math.floor((logger.leadS + tape.steps * STEP_S + logger.tailS) * rateHz));
  const volts: number[] = [];
  for (let index = 0; index < count; index++) {
    const step = Math.floor((index / rateHz - logger.leadS) / STEP_S);
    const isRunning = step >= 0 && step < tape.steps;
    const true_ = isRunning ? tape.volts[step] : state.supply.sourceVolts;
    volts.push(Math.round((true_ + logger.supplyOffsetVolts + random.normal(0, 0.015)) * 50) / 50);
  }
  return { rateHz: rateHz * state.clockRate, volts };
}
