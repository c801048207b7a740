import { median } from '../statistics/median.ts';
import { firstAtOrAfter } from '../stroke/signal/interval.ts';
import type { SideSignal } from '../stroke/signal/sideSignal.ts';
import type { HeldLevels } from './heldLevels.ts';
import type { Move } from './movesOf.ts';

/** A turn is looked for within this part of a movement's length of where it should be. */
const NEAR_PART = 0.1;
/** For a moment, seconds, the current falls to less than this part of what it adds to the held level before and after. */
const MOMENT_S = 0.08;
const BESIDE_S = 0.5;
const FALLEN_PART = 0.6;
const FEWEST_BESIDE = 3;
/** What follows a movement is another one only where most of it is left. */
const LEAST_LEFT_PART = 0.3;

/**
 * Where a motor that is held in place turns back without a rest, seconds: between whole movements, each of `usualS`, there is a
 * moment in which its current falls towards what holds it. Of a recorder that is too slow to see that, where it falls the furthest.
 * Empty where what lasts is no longer than one movement. They are counted from its start, or from its end where the record begins
 * within it.
 */
export function turnsWithin(signal: SideSignal, levels: HeldLevels, move: Move, usualS: number): number[] {
  const turns: number[] = [];
  const [startS, endS] = [move.fromS, move.fromS + move.lastsS];
  const isCut = startS - signal.timesS[0] < usualS * NEAR_PART;
  const stepS = isCut ? -usualS : usualS;
  const left = (atS: number) => (isCut ? atS - startS : endS - atS);
  for (let atS = (isCut ? endS : startS) + stepS; left(atS) > LEAST_LEFT_PART * usualS; atS += stepS) {
    atS = lowestNear(signal, levels, atS, NEAR_PART * usualS).atS;
    turns.push(atS);
  }
  return isCut ? turns.reverse() : turns;
}

/** Whether the current falls towards what holds the motor within so many seconds of a time. */
export function showsTurn(signal: SideSignal, levels: HeldLevels, atS: number, nearS: number): boolean {
  return lowestNear(signal, levels, atS, nearS).part < FALLEN_PART;
}

/** When the current lies furthest below what it is before and after together; and which part of the lower of those is left then. */
function lowestNear(
  { timesS, amps, stepS }: SideSignal,
  { heldAmps }: HeldLevels,
  atS: number,
  nearS: number,
) {
  const width = Math.max(1, Math.round(MOMENT_S / stepS));
  const beside = Math.max(FEWEST_BESIDE, Math.round(BESIDE_S / stepS));
  const from = Math.max(beside, firstAtOrAfter(timesS, atS - nearS));
  const to = Math.min(amps.length - beside - width, firstAtOrAfter(timesS, atS + nearS));
  let furthest = 0;
  let lowest = { atS, part: 1 };
  for (let i = from; i <= to; i++) {
    const moment = mean(amps.subarray(i, i + width));
    const before = median(amps.subarray(i - beside, i));
    const after = median(amps.subarray(i + width, i + width + beside));
    const fallen = before - moment + (after - moment);
    if (fallen <= furthest) continue;
    furthest = fallen;
    const level = Math.min(before, after) - heldAmps;
    lowest = { atS: timesS[i], part: level > 0 ? (moment - heldAmps) / level : 1 };
  }
  return lowest;
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
