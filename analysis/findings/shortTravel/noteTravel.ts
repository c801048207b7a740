import { type Direction, otherWay } from '../../trace.ts';
import { type FindingContext, openOf } from '../finding.ts';
import type { JudgedWay } from './judgeWay.ts';
import { isWhole, takeBack } from './movementParts.ts';
import { FAR_FROM_END, SHORT_WITHOUT_STOP } from './shortSigns.ts';
import { type DirectionTravel, SAME_SUPPLY_HOURS, type TravelMemory } from './travelMemory.ts';

/** The usual rate of end stops is a moving mean over about so many strokes. */
const RATE_STROKES = 12;

/** Keeps what the next stroke is held against. */
export function noteWay(
  context: FindingContext,
  { made: { part }, shortBy }: JudgedWay,
  { short, explained }: { readonly short: boolean; readonly explained: boolean },
): void {
  const { state, event, direction } = context;
  const { travel } = state;
  if (!short && !explained) travel[direction].took = part;
  Object.assign(travel, {
    mayBeCut: short || (explained && travel.wasShort),
    shortBy: !explained && shortBy > SHORT_WITHOUT_STOP ? shortBy : 0,
    wasShort: short,
    direction,
    atMs: event.atMs,
    part,
    leftBehind: leavesBehind(context),
  } satisfies Partial<TravelMemory>);
}

/** Whether a side stopped far from its end, while another may have gone all the way: where the room stands then nobody knows. */
function leavesBehind({ state, residual }: FindingContext): boolean {
  return state.room.sides.some((side) => (residual(side, 'durationS')?.rise ?? 0) < -FAR_FROM_END);
}

/** Takes a part of a movement to what it goes on from: none of them is short by itself, and none is a stroke to learn from. */
export function takeUp(
  { state, event, direction }: FindingContext,
  together: number,
  stopped: boolean,
): void {
  const { travel } = state;
  const own = travel[direction];
  takeBack(state.recent, own, direction, stopped);
  const whole = isWhole(together, Math.max(1, own.took));
  const shortBy = whole ? 0 : Math.max(0, -Math.log(together));
  if (whole && openOf(state, 'short-travel').every((open) => open.direction !== direction))
    learnRate(own, stopped);
  Object.assign(travel, {
    atMs: event.atMs,
    part: together,
    leftBehind: false,
    shortBy,
    wasShort: !whole,
    mayBeCut: true,
  } satisfies Partial<TravelMemory>);
}

/**
 * Where nobody recorded the supply, the way back tells it: a stroke that lacked its stop and took less of its time than
 * the whole one after it, at the same place, was cut short by so much.
 */
export function compareOtherWay(
  travel: TravelMemory,
  direction: Direction,
  atMs: number,
  part: number,
): void {
  const other = travel[otherWay(direction)].latest.at(-1);
  if (other === undefined || other.stopped || atMs - travel.atMs > SAME_SUPPLY_HOURS * 3_600_000) return;
  other.short = Math.max(other.short, Math.log(part / travel.part));
}

/** Takes one more stroke into how often this direction comes to its stop. */
export function learnRate(travel: DirectionTravel, stopped: boolean): void {
  const now = stopped ? 1 : 0;
  travel.stopRate = travel.stopRate === null ? now : travel.stopRate + (now - travel.stopRate) / RATE_STROKES;
}
