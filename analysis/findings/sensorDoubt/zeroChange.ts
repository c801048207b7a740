import { endsAtStandstill } from '../../baseline/endsAtStandstill.ts';
import type { Residual } from '../../baseline/judge.ts';
import { fromScale } from '../../baseline/scale.ts';
import { stallsAsEver } from '../../baseline/stallsAsEver.ts';
import { standstillAmps } from '../../motor/turns.ts';
import { channelOf } from '../../roomState.ts';
import { median } from '../../statistics/median.ts';
import { mostOffset } from '../../stroke/rest/offset.ts';
import { type FindingContext, isDoubted } from '../finding.ts';
import { isAsEver, isReadBeside } from './asEver.ts';
import { FEWEST_BOTH_WAYS, LATEST_EACH_WAY } from './bothWays.ts';
import { MOVED_PART } from './movedLoad.ts';
import { beginZeroMemory, type ReadPeak, type ReadStroke, type ZeroMemory } from './zeroMemory.ts';

/** While it is said already, this part of what else would be will do to go on. */
const STILL_PART = 0.5;
/** Both ways, or running and stalled, by the same amount, within this part of it. */
const ALIKE = 0.4;
/** The stall moved by more than chance does: standard deviations of the latest strokes' mean. */
const SIGMAS = 2;
/** A load slows the motor that bears it, and a wrong zero slows nothing: by so much, natural logarithm, a guess. */
const SLOWED = 0.06;

/**
 * By how many amperes a side's zero seems to have moved, where its records hold no rest to tell it by; null: it did not. A
 * reversed current reads with the other sign, so that a moved zero adds in one direction what it takes off in the other; friction raises both. Where the sign is not told, a moved zero adds as many amperes to the stall as to the
 * running current, and slows nothing; friction leaves the stall, which is V/R, and slows the room.
 */
export function zeroChange(context: FindingContext, side: string): number | null {
  const { state, analysis, direction } = context;
  const memory = state.zero[side];
  const judged = context.residual(side, 'runningAmps');
  if (memory === undefined || judged === null) return null;
  const measured = analysis.sides[side];
  if (measured.offsetAmps !== null) {
    Object.assign(memory, beginZeroMemory());
    return null;
  }
  const expected = fromScale('runningAmps', Math.log(measured.runningAmps) - judged.rise - judged.byCopper);
  memory[direction].push(measured.runningAmps - expected);
  if (memory[direction].length > LATEST_EACH_WAY) memory[direction].shift();
  const read = readStroke(context, side, measured.runningAmps - expected);
  memory.read = read === null ? [] : [...memory.read, read].slice(-FEWEST_BOTH_WAYS);
  const part = isDoubted(state, side, 'offset') ? STILL_PART : 1;
  const moved = byDirections(memory) ?? byStall(memory, part * SIGMAS);
  return moved !== null && Math.abs(moved) > part * mostOffset(expected) ? moved : null;
}

function byDirections({ extend, retract }: ZeroMemory): number | null {
  if (extend.length === 0 || retract.length === 0 || extend.length + retract.length < FEWEST_BOTH_WAYS)
    return null;
  const [out, back] = [median(extend), median(retract)];
  const size = (Math.abs(out) + Math.abs(back)) / 2;
  return out * back < 0 && Math.abs(out + back) < ALIKE * size ? (out - back) / 2 : null;
}

/**
 * Null without a recorded supply: it moves both the stall and the time; and where the side stalls alone that did not.
 * Where no stall was read the start stands for it, as well as it is read; one that is held low follows the load.
 */
function readStroke(context: FindingContext, side: string, amps: number): ReadStroke | null {
  const { state, analysis, direction, residual } = context;
  if (!stallsAsEver(channelOf(state, side, direction), analysis)) return null;
  const duration = residual(side, 'durationS');
  const { endStopAmps, inrushAmps, runningAmps } = analysis.sides[side];
  const start = residual(side, 'inrushAmps');
  const stall = endsAtStandstill(analysis.sides[side]) ? residual(side, 'endStopAmps') : start;
  if (isBorneByOther(context, side, amps)) return null;
  if (stall === start && inrushAmps < LEAST_START * runningAmps) return null;
  if (analysis.supplyVolts === null || stall === null || duration === null) return null;
  const standstill = stall === start ? inrushAmps : standstillAmps(analysis.sides[side]);
  const usualStall = standstill * Math.exp(-stall.rise);
  return {
    runningAmps: amps,
    stallAmps: standstill - usualStall,
    stallSpread: usualStall * stall.deviation,
    start: readPeak(inrushAmps, start),
    stop: readPeak(endStopAmps, residual(side, 'endStopAmps')),
    longer: duration.rise,
  };
}

function readPeak(amps: number | null, judged: Residual | null): ReadPeak {
  if (amps === null || judged === null) return null;
  return { amps: amps * (1 - Math.exp(-judged.rise)), spread: amps * judged.deviation };
}

/** A motor draws so many times as much at its start as it runs at, at the least; less is held there. A guess, no source. */
const LEAST_START = 1.3;

/** Whether another side changed the other way: a load that moved is no zero, though starts and stops read as much more by chance. */
function isBorneByOther({ state, analysis, residual }: FindingContext, side: string, amps: number): boolean {
  return state.room.sides.some((other) => {
    const judged = other === side ? null : residual(other, 'runningAmps');
    if (judged === null) return false;
    const change = analysis.sides[other].runningAmps * (1 - Math.exp(-judged.rise - judged.byCopper));
    return -change / amps > MOVED_PART;
  });
}

function byStall({ read }: ZeroMemory, sigmas: number): number | null {
  if (read.length < FEWEST_BOTH_WAYS) return null;
  const of = (key: Exclude<keyof ReadStroke, 'start' | 'stop'>) => median(read.map((stroke) => stroke[key]));
  const [running, stall] = [of('runningAmps'), of('stallAmps')];
  const isSeen = Math.abs(stall) > (sigmas * of('stallSpread')) / Math.sqrt(FEWEST_BOTH_WAYS);
  const isAlike = Math.abs(stall - running) < ALIKE * Math.abs(running);
  const isSlowed = of('longer') > SLOWED;
  const readsAsEver = (['start', 'stop'] as const).some((peak) =>
    peaksStay(
      read.map((stroke) => stroke[peak]),
      running,
    ),
  );
  return isSeen && isAlike && !isSlowed && !readsAsEver ? running : null;
}

/**
 * Whether the starts, or the stops, read what they did: a zero adds to all that is read, while an end that follows the load rises
 * without the start, and a start that came between two samples reads more by chance.
 */
function peaksStay(peaks: readonly ReadPeak[], running: number): boolean {
  const read = peaks.filter((peak) => peak !== null);
  if (read.length < FEWEST_BOTH_WAYS) return false;
  const spread = median(read.map(({ spread }) => spread)) / Math.sqrt(FEWEST_BOTH_WAYS);
  const moved = median(read.map(({ amps }) => amps));
  return isReadBeside(spread, running) && isAsEver(moved, running);
}
