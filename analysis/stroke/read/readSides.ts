import type { DoneAnalysis, Doubt } from '../../measures.ts';
import { median } from '../../statistics/median.ts';
import { quantile } from '../../statistics/quantile.ts';
import type { Direction, SideTrace, StrokeTrace, SupplyTrace } from '../../trace.ts';
import { restLevel } from '../rest/restLevel.ts';
import { withoutBraking } from '../signal/brakingSwing.ts';
import { interpolate } from '../signal/interpolate.ts';
import { firstAtOrAfter, type Interval } from '../signal/interval.ts';
import { type SideSignal, sideSignal } from '../signal/sideSignal.ts';
import type { ActiveSide, SideToMeasure } from './activeSide.ts';
import { activity, commonRests } from './activity.ts';
import { signOf } from './direction.ts';
import { idlingSide } from './idlingSide.ts';
import { isLeakage } from './isLeakage.ts';
import { withoutPressesAtStop } from './pressedAgain.ts';
import { isStuck } from './stuckSide.ts';

/** A side that drew less than this was not driven, or its clamp was left off, amperes. */
const LEAST_ACTIVE_AMPS = 0.15;
/** No slide room of this kind draws as much: the scale or the sensor is wrong, amperes. */
const MOST_ACTIVE_AMPS = 1000;
/** What lasts for less is a switch that was tapped, unless the motor stalled. */
const SHORTEST_STROKE_S = 1;
/** A room that stands is let go sooner, by whoever holds the switch or by the controller: at least so long it stalled. */
const SHORTEST_STALLED_S = 0.35;
/**
 * The last quarter of a drive's samples shows a stall where it lies above this part of the most that was drawn, and so many
 * times above what the lowest quarter stays under: the motor had turned between. Guesses, no source.
 */
const LAST_PART = 0.25;
const STALLED_PART = 0.6;
const ABOVE_TURNING = 2;
/** A larger share of missed samples leaves too little to trust. */
const MOST_MISSED = 0.3;

interface UnreadSide {
  readonly doubt: Doubt;
  readonly detail: string;
  /** Where nothing speaks against the record but that hardly any current shows in it. */
  readonly signal?: SideSignal;
}

/** A switch that was only tapped. */
export const TOO_BRIEF: UnreadSide = { doubt: 'flat', detail: 'The motor ran for less than a second.' };
const NO_CURRENT: UnreadSide = { doubt: 'flat', detail: 'The record shows no motor current.' };
const STUCK: UnreadSide = {
  doubt: 'flat',
  detail: 'It reads the same all the while, also where the motor stands.',
};

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
    const others = first.flatMap((other) => ('active' in other && other !== alone ? [other] : []));
    const side = 'doubt' in found ? idling(found, first) : isStuck(found, others) ? STUCK : found;
    if ('doubt' in side) unread.push({ side: trace.sides[i].side, doubt: side.doubt, detail: side.detail });
    else active.push(side);
  });
  return { active, unread };
}

/** A side that could not be read by itself, but ran idle while another one was driven; otherwise as it is. */
function idling(unread: UnreadSide, all: readonly (ActiveSide | UnreadSide)[]): ActiveSide | UnreadSide {
  const driven = all.find((side) => 'active' in side);
  if (unread.signal === undefined || driven === undefined || !('active' in driven)) return unread;
  const found = idlingSide(unread.signal, driven);
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
  if (!(rest.activeAmps >= LEAST_ACTIVE_AMPS) || isLeakage(signal, rest)) return { ...NO_CURRENT, signal };
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

/** The sides that were read, at least one, as they are measured: with when all of them rested together. */
export function sidesToMeasure(
  read: readonly ActiveSide[],
  supply: SupplyTrace | null,
  direction: Direction,
): SideToMeasure[] {
  const sides = withoutPressesAtStop(read);
  const rests = commonRests(sides.map((side) => side.active));
  return sides.map((side) => {
    const volts = supply === null ? null : interpolate(supply, side.signal.timesS);
    const { signal, rest, amps, active } = side;
    // What came to its end before took no part in it.
    const pauses = rests.filter(({ fromS }) => fromS < active.toS);
    return { signal, rest, amps, active, pauses, volts, direction };
  });
}
