import { median } from '../statistics/median.ts';
import { firstAtOrAfter } from '../stroke/signal/interval.ts';
import { type SideSignal, sideSignal } from '../stroke/signal/sideSignal.ts';
import { type HeldLevels, heldLevels } from './heldLevels.ts';
import { type Move, movesOf } from './movesOf.ts';
import type { SampleRange } from './sampleRange.ts';
import { showsTurn, turnsWithin } from './turnsWithin.ts';

/** A record of fewer samples holds no two movements. */
const FEWEST_SAMPLES = 20;
/** A controller moves its motor alike each time: what lasts for this part of a movement and more is a whole one. */
const WHOLE_PART = 0.8;
/** Moves that lie further from each other are too unlike to be that: these are stretches of one stroke in which it was heavier. */
const LEAST_WHOLE_PART = 0.8;
const FEWEST_WHOLE = 2;
/** What is no further from the record's edge was cut off by it, seconds. */
const EDGE_S = 0.5;
/**
 * A movement that is out and back without a rest is twice as long as the others, to this part; shows where it turned; and is not
 * the only one of its length. Two of the three tell it.
 */
const HALF_PART = 0.15;
/** Where such a one should turn, within this part of its length. */
const NEAR_PART = 0.05;

/** A movement, and of how many it was put together. */
interface HeldStroke extends Move {
  readonly parts: number;
}

/**
 * The strokes of a motor that is held in place between them, as servos and stepping drives are: its current never comes to rest,
 * but falls to a level that stands well above nothing (`stroke/rest/heldLevel.ts`). What lies above that level is movement; where a
 * whole movement follows the other without any rest, the moment in which it stood shows (`turnsWithin.ts`). Movements in parts
 * are one as long as they make no more than a whole one together. Ranges come in order, without the rests between. `timesS`
 * rises strictly; `amps` are those of all sides together, NaN where a sample was missed. Null: this is no such motor, or what it
 * does is not seen to be several strokes.
 */
export function heldStrokes(timesS: Float64Array, amps: Float64Array): SampleRange[] | null {
  if (amps.length < FEWEST_SAMPLES) return null;
  // It draws current all the while, whichever way it moves: most of that has the sign of its load.
  const signal = sideSignal({ side: '', timesS, amps }, median(amps) < 0 ? -1 : 1);
  const levels = signal === null ? null : heldLevels(signal);
  if (signal === null || levels === null) return null;
  const all = movesOf(signal, levels);
  const usualS = usualMoveS(signal, levels, all);
  const strokes = strokesOf(signal, levels, all, usualS);
  const isWhole = ({ lastsS }: Move) => lastsS >= WHOLE_PART * usualS && lastsS <= usualS / WHOLE_PART;
  const whole = strokes.filter(isWhole);
  // What the record cuts off tells nothing of how long it would have lasted.
  const told = strokes.filter((stroke) => isWhole(stroke) || !isCutOff(signal, stroke));
  const atOnce = whole.filter(({ parts }) => parts === 1);
  if (atOnce.length < FEWEST_WHOLE || lastS(whole) < LEAST_WHOLE_PART * lastS(told)) return null;
  return strokes.map(({ fromS, toS }) => ({
    from: firstAtOrAfter(timesS, fromS),
    to: firstAtOrAfter(timesS, toS),
  }));
}

function isCutOff({ timesS }: SideSignal, { fromS, toS }: Move): boolean {
  return fromS - timesS[0] < EDGE_S || timesS[timesS.length - 1] - toS < EDGE_S;
}

function lastS(strokes: readonly Move[]): number {
  return strokes.reduce((sum, stroke) => sum + stroke.lastsS, 0);
}

/** How long a movement lasts as a rule, seconds: one way, where out and back follow each other without a rest. */
function usualMoveS(signal: SideSignal, levels: HeldLevels, all: readonly Move[]): number {
  const longestS = all.reduce((most, { lastsS }) => Math.max(most, lastsS), 0);
  const long = all.filter(({ lastsS }) => lastsS >= WHOLE_PART * longestS);
  const longS = median(Float64Array.from(long, ({ lastsS }) => lastsS));
  const turning = long.filter((move) =>
    showsTurn(signal, levels, move.fromS + longS / 2, NEAR_PART * longS),
  ).length;
  const others = all.filter(({ lastsS }) => lastsS < WHOLE_PART * longestS);
  const isHalf = ({ lastsS }: Move) => Math.abs(lastsS - longS / 2) <= (HALF_PART * longS) / 2;
  const told = [
    2 * turning > long.length,
    long.length >= FEWEST_WHOLE,
    others.length > 0 && others.every(isHalf),
  ];
  return told.filter((each) => each).length >= 2 ? longS / 2 : longS;
}

/** Each movement parted where it turned, and those in parts put together. */
function strokesOf(
  signal: SideSignal,
  levels: HeldLevels,
  all: readonly Move[],
  usualS: number,
): HeldStroke[] {
  const strokes: HeldStroke[] = [];
  for (const move of all) {
    const edges = [move.fromS, ...turnsWithin(signal, levels, move, usualS), move.toS];
    for (let i = 1; i < edges.length; i++) {
      const [fromS, toS] = [edges[i - 1], edges[i]];
      const lastsS = (i === edges.length - 1 ? move.fromS + move.lastsS : toS) - fromS;
      const last = strokes.at(-1);
      const goesOn = i === 1 && last !== undefined && last.lastsS + lastsS <= usualS / WHOLE_PART;
      if (goesOn)
        strokes[strokes.length - 1] = {
          ...last,
          toS,
          lastsS: last.lastsS + lastsS,
          parts: last.parts + 1,
        };
      else strokes.push({ fromS, toS, lastsS, parts: 1 });
    }
  }
  return strokes;
}
