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

/** While a warning is open, this part of the limits is enough for it to go on. */
const STILL_PART = 0.5;
/** A zero moves both directions, or running and stall current, by the same amount, within this part of it. */
const ALIKE = 0.4;
/** The stall must have moved by this many standard deviations of the latest strokes' mean: more than by chance. */
const SIGMAS = 2;
/**
 * A load slows the motor that bears it by more than this, natural logarithm; a wrong zero slows nothing. A guess, no
 * source.
 */
const SLOWED = 0.06;

/**
 * By how many amperes a side's zero seems to have moved, where its records hold no rest to tell it by; null: it did
 * not.
 *
 * Where a reversed current reads with the other sign, a moved zero adds in one direction what it takes off in the
 * other, while friction raises both. Where the sign is not recorded, a moved zero adds as many amperes to the stall as
 * to the running current and slows nothing, while friction leaves the stall, which is V/R, and slows the room.
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
 * What a stroke without a rest tells of its zero. Null without a recorded supply, which moves both stall and time, and
 * where the sides do not stall as they usually do. Where no stall was read the start stands for it, unless a controller
 * holds it low: then it follows the load.
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

/**
 * A motor's start draws at least this many times its running current; a lower one is held by a controller. A guess, no
 * source.
 */
const LEAST_START = 1.3;

/**
 * Whether another side changed the other way: that is a load that moved, even if starts and stops read as much more by
 * chance.
 */
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
 * Whether the starts, or the stops, read what they did. A moved zero adds to every reading. A stop that follows the
 * load rises without the start, and a start whose peak falls between two samples reads more or less by chance.
 */
function peaksStay(peaks: readonly ReadPeak[], running: number): boolean {
  const read = peaks.filter((peak) => peak !== null);
  if (read.length < FEWEST_BOTH_WAYS) return false;
  const spread = median(read.map(({ spread }) => spread)) / Math.sqrt(FEWEST_BOTH_WAYS);
  const moved = median(read.map(({ amps }) => amps));
  return isReadBeside(spread, running) && isAsEver(moved, running);
}
