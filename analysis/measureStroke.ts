import type { DoneAnalysis, Doubt, SideMeasures, StrokeAnalysis, UnusableAnalysis } from './measures.ts';
import { median } from './statistics/median.ts';
import { quantile } from './statistics/quantile.ts';
import { type Activity, activity, commonRests } from './stroke/activity.ts';
import { withoutBraking } from './stroke/brakingSwing.ts';
import { directionBySign, signOf } from './stroke/direction.ts';
import { doubtsOf } from './stroke/doubts.ts';
import { idlingSide } from './stroke/idlingSide.ts';
import { firstAtOrAfter, type Interval } from './stroke/interval.ts';
import { lagOf } from './stroke/lag.ts';
import { measureSide } from './stroke/measureSide.ts';
import { type RestLevel, restLevel } from './stroke/restLevel.ts';
import { type SideSignal, sideSignal } from './stroke/sideSignal.ts';
import { interpolate } from './stroke/travelPosition.ts';
import type { RoomDescription, SideTrace, StrokeTrace, SupplyTrace } from './trace.ts';

export { directionBySign } from './stroke/direction.ts';

/** A side that drew less than this was not driven, or its clamp was left off, amperes. */
const LEAST_ACTIVE_AMPS = 0.15;
/** No slide room of this kind draws as much: the scale or the sensor is wrong, amperes. */
const MOST_ACTIVE_AMPS = 1000;
const SHORTEST_STROKE_S = 1;
/** A room that stands is let go sooner, by whoever holds the switch or by the controller: at least so long it stalled. */
const SHORTEST_STALLED_S = 0.35;
const LAST_PART = 0.25;
const STALLED_PART = 0.6;
const ABOVE_TURNING = 2;
/** More missed samples than this leave too little to trust. */
const MOST_MISSED = 0.3;

export interface ActiveSide {
  readonly signal: SideSignal;
  readonly rest: RestLevel;
  readonly amps: Float64Array;
  readonly active: Activity;
}

/**
 * Everything that one stroke's samples say without the room's history: phases, measures, positions, the share of
 * the sides and the lag between them.
 *
 * A side that was recorded but drew nothing is left out and said in `doubts`; a stroke in which no side can be
 * measured is `unusable` with a reason for people. Never throws for any trace of finite numbers and NaN.
 */
export function measureStroke(trace: StrokeTrace, room: RoomDescription): StrokeAnalysis {
  const direction = trace.direction ?? directionBySign(trace, room);
  if (direction === null) {
    return unusable('The direction was not given and cannot be told from the sign of the current.');
  }
  const { active, unread } = readSides(trace);
  const doubts: DoneAnalysis['doubts'][number][] = [...unread];
  const reasons = unread.map(({ side, detail }) => `${side}: ${detail}`);
  if (active.length === 0) {
    // A switch that was only tapped speaks against no sensor.
    const tapped = unread.every(({ detail }) => detail === TOO_BRIEF.detail);
    return unusable(`No side could be measured. ${reasons.join(' ')}`.trim(), tapped ? [] : doubts);
  }
  const supply = plausibleSupply(trace.supply, room.nominalVolts);
  const pauses = commonRests(active.map((side) => side.active));
  const sides: Record<string, SideMeasures> = {};
  for (const side of active) {
    const measured = measureSide({ ...side, pauses, supply, direction });
    if (measured === null) continue;
    sides[side.signal.side] = measured;
    doubts.push(...doubtsOf(side.signal, side.rest, measured));
  }
  const names = room.sides.filter((name) => sides[name] !== undefined);
  if (names.length === 0) return unusable('The stroke is too short to hold any running current.', doubts);
  return {
    status: 'done',
    direction,
    positionBy: supply === null ? 'time' : 'speed',
    sides,
    share: shareOf(sides, room),
    lagS: lagOf(sides, room),
    supplyVolts: supplyWhileRunning(supply, sides[names[0]]),
    doubts,
  };
}

function unusable(reason: string, doubts: DoneAnalysis['doubts'] = []): UnusableAnalysis {
  return { status: 'unusable', reason, doubts };
}

/** A supply reading far from nominal is in another unit or from another wire: as good as none, parts of nominal. */
const LEAST_SUPPLY = 0.3;
const MOST_SUPPLY = 2.5;

/** The supply where it is one: null for none, and for a reading in another unit or of another wire. */
export function plausibleSupply(supply: SupplyTrace | null, nominalVolts: number): SupplyTrace | null {
  if (supply === null || supply.volts.length === 0) return null;
  const usual = median(supply.volts) / nominalVolts;
  const extreme = supply.volts.some((volts) => Math.abs(volts) > 4 * nominalVolts);
  return usual >= LEAST_SUPPLY && usual <= MOST_SUPPLY && !extreme ? supply : null;
}

interface UnreadSide {
  readonly doubt: Doubt;
  readonly detail: string;
  /** Where nothing speaks against the record but that hardly any current shows in it. */
  readonly signal?: SideSignal;
}

/** The sides that drew current, and those that cannot be read, with why; both in the order sent. */
export function readSides(trace: StrokeTrace): {
  active: ActiveSide[];
  unread: DoneAnalysis['doubts'][number][];
} {
  const active: ActiveSide[] = [];
  const unread: DoneAnalysis['doubts'][number][] = [];
  const first = trace.sides.map((side) => readSide(side, null));
  const stood = first.map((side) => ('rest' in side ? side.rest.stood : null)).find((span) => span !== null);
  first.forEach((alone, i) => {
    const unknown = stood !== undefined && 'rest' in alone && alone.rest.offsetAmps === null;
    const found = unknown ? readSide(trace.sides[i], stood) : alone;
    const side = 'doubt' in found ? idling(found, first) : found;
    if ('doubt' in side) unread.push({ side: trace.sides[i].side, doubt: side.doubt, detail: side.detail });
    else active.push(side);
  });
  return { active, unread };
}

/** A side that could not be read by itself, but ran idle while another one was driven; otherwise as it is. */
function idling(unread: UnreadSide, all: readonly (ActiveSide | UnreadSide)[]): ActiveSide | UnreadSide {
  const driven = all.find((side) => 'active' in side);
  if (unread.signal === undefined || driven === undefined || !('active' in driven)) return unread;
  const found = idlingSide(unread.signal, driven.active);
  if (found === null) return unread;
  const offset = found.rest.offsetAmps ?? 0;
  return { signal: unread.signal, amps: unread.signal.amps.map((amps) => amps - offset), ...found };
}

/** `stood`: when another side of the room was seen to stand. */
function readSide(recorded: SideTrace, stood: Interval | null): ActiveSide | UnreadSide {
  const trace = withoutBraking(recorded);
  const sign = signOf(trace.amps);
  const signal = sign === 0 ? null : sideSignal(trace, sign);
  if (signal === null || signal.amps.length < 8) {
    return { doubt: 'flat', detail: 'There are too few samples, or none that reads any current.' };
  }
  if (signal.missedShare > MOST_MISSED) {
    return { doubt: 'gaps', detail: `${Math.round(100 * signal.missedShare)} % of the samples are missing.` };
  }
  const rest = restLevel(signal, stood);
  if (!(rest.activeAmps >= LEAST_ACTIVE_AMPS)) return { ...NO_CURRENT, signal };
  if (rest.activeAmps < 3 * rest.noiseAmps && rest.noiseAmps > LEAST_ACTIVE_AMPS) {
    return { doubt: 'noise', detail: "The sensor's noise is as large as the motor's current.", signal };
  }
  if (rest.activeAmps > MOST_ACTIVE_AMPS) {
    return { doubt: 'scale', detail: 'The current is larger than any such motor draws.' };
  }
  const offset = rest.offsetAmps ?? 0;
  const amps = new Float64Array(signal.amps.length);
  for (let i = 0; i < amps.length; i++) amps[i] = signal.amps[i] - offset;
  const found = activity(signal, rest);
  if (found === null) return { ...NO_CURRENT, signal };
  const lastsS = found.toS - found.fromS;
  if (lastsS < SHORTEST_STALLED_S || (lastsS < SHORTEST_STROKE_S && !endsStalled(signal, amps, found))) {
    return { ...TOO_BRIEF, signal };
  }
  return { signal, rest, amps, active: found };
}

/**
 * Whether a motor had turned and then stalled when it was switched off: what it drew last is near the most that it drew, and
 * far above what it drew between. A start that is let go at once shows no such thing, nor does a level of any height.
 */
function endsStalled({ timesS }: SideSignal, amps: Float64Array, { fromS, toS }: Interval): boolean {
  const driven = amps.subarray(firstAtOrAfter(timesS, fromS), firstAtOrAfter(timesS, toS));
  const last = driven.subarray(Math.floor((1 - LAST_PART) * driven.length));
  if (last.length === 0) return false;
  const stall = median(last);
  return stall > STALLED_PART * Math.max(...driven) && stall > ABOVE_TURNING * quantile(driven, LAST_PART);
}

const TOO_BRIEF: UnreadSide = { doubt: 'flat', detail: 'The motor ran for less than a second.' };
const NO_CURRENT: UnreadSide = { doubt: 'flat', detail: 'The record shows no motor current.' };

function shareOf(sides: Record<string, SideMeasures>, room: RoomDescription): Record<string, number> | null {
  if (room.sides.some((name) => sides[name] === undefined)) return null;
  const total = room.sides.reduce((sum, name) => sum + sides[name].runningAmps, 0);
  if (!(total > 0)) return null;
  return Object.fromEntries(room.sides.map((name) => [name, sides[name].runningAmps / total]));
}

function supplyWhileRunning(supply: SupplyTrace | null, side: SideMeasures): number | null {
  if (supply === null) return null;
  const { inrushEndS, endStopStartS, endS } = side.phases;
  const toS = endStopStartS ?? endS;
  const times = Float64Array.from(
    { length: 64 },
    (_, i) => inrushEndS + ((i + 0.5) / 64) * (toS - inrushEndS),
  );
  return interpolate(supply, times).reduce((sum, volts) => sum + volts, 0) / times.length;
}
