import { endsStalled, type RecordedSide } from './endsStalled.ts';
import { heldStrokes } from './heldStrokes.ts';
import type { SampleRange } from './sampleRange.ts';
import { steadyCurrent } from './steadyCurrent.ts';
import { strokesOfPieces, usualStrokeS } from './strokesOfPieces.ts';

/** A pause shorter than this may belong to a stroke: a hand lifted from the button. */
const LONGEST_PAUSE_S = 10;
/** One shorter than this does: nobody sends a room back so soon. */
const SHORTEST_TURN_S = 1;
/** Rest that a stroke keeps before and behind it, for the sensor's offset to be read from. */
const MARGIN_S = 2;
/** A motor braked or let go shows the other sign for less than this; one that drives back, for longer. */
const SHORTEST_REVERSAL_S = 1;
/** Part of the largest steady current, as `stroke/read/activity.ts` has it of the running one; and amperes that no motor runs on. */
const ACTIVE_PART = 0.06;
const LEAST_ACTIVE_AMPS = 0.1;
/** Sensor noise stays below four of its standard deviations. */
const NOISE_FACTOR = 4;

/** Where a recording is cut into strokes. */
export interface CutRecording {
  readonly ranges: readonly SampleRange[];
  /** Whether a motor that is held in place was cut where it rests: its current has the sign of its load, whichever way it moves. */
  readonly isHeld: boolean;
}

interface Run extends SampleRange {
  readonly sign: 1 | -1;
}

/**
 * Cuts a continuous recording into strokes by activity: where any side's current, steadied over a few samples, stands
 * clear of its rest. Pauses under 10 s stay within a stroke, unless the motor comes back from one with the other sign,
 * for that is the way back. Where no sign changes, as with a meter that knows none, the way back shows in the end stop
 * before the pause, or in the strokes' lengths (`strokesOfPieces.ts`). A motor that is held in place while it rests is
 * never at rest by its current: `heldStrokes.ts`. Up to 2 s of rest stay before and behind each stroke. `timesS` rises strictly and is as
 * long as each of `sides`, amperes with NaN for missed samples. A recording in which nothing flows has no stroke: the
 * answer is empty. Ranges come in order and do not overlap.
 */
export function splitRecording(timesS: Float64Array, sides: readonly Float64Array[]): CutRecording {
  const recorded = sides.map((amps) => ({ amps, steady: steadyCurrent(amps) }));
  const { stretches, turns } = stretchesOf(timesS, activeRuns(timesS, activeSigns(recorded)));
  const driven = turns ? stretches.map(joined) : withoutSigns(timesS, recorded, stretches);
  const strokes = driven.flatMap((stroke) => heldWithin(timesS, sides, stroke));
  const ranges = strokes.map(({ from, to }, i) => ({
    from: reach(timesS, from, -1, i === 0 ? 0 : middle(strokes[i - 1].to, from)),
    to: reach(timesS, to - 1, 1, i === strokes.length - 1 ? timesS.length : middle(to, strokes[i + 1].from)),
  }));
  return { ranges, isHeld: strokes.length > driven.length };
}

/** The strokes within a stretch of drive of a motor that is held in place; the stretch itself where that is not so. */
function heldWithin(
  timesS: Float64Array,
  sides: readonly Float64Array[],
  { from, to }: SampleRange,
): SampleRange[] {
  const together = Float64Array.from({ length: to - from }, (_, i) =>
    sides.reduce((sum, amps) => sum + amps[from + i], 0),
  );
  const strokes = heldStrokes(timesS.subarray(from, to), together);
  return strokes?.map((stroke) => ({ from: from + stroke.from, to: from + stroke.to })) ?? [{ from, to }];
}

/** For each sample the sign of the side that is furthest above its own threshold; 0 at rest. */
function activeSigns(sides: readonly RecordedSide[]): Int8Array {
  const signs = new Int8Array(sides[0]?.amps.length ?? 0);
  const steady = sides.map((side) => side.steady);
  let largest = 0;
  for (const { amps } of steady) for (const value of amps) largest = Math.max(largest, Math.abs(value));
  const furthest = new Float64Array(signs.length);
  for (const { amps, noiseAmps } of steady) {
    const threshold = Math.max(LEAST_ACTIVE_AMPS, ACTIVE_PART * largest, NOISE_FACTOR * noiseAmps);
    for (let i = 0; i < signs.length; i++) {
      const beyond = Math.abs(amps[i]) / threshold;
      if (beyond <= 1 || beyond <= furthest[i]) continue;
      furthest[i] = beyond;
      signs[i] = amps[i] > 0 ? 1 : -1;
    }
  }
  return signs;
}

function activeRuns(timesS: Float64Array, signs: Int8Array): Run[] {
  const runs: Run[] = [];
  for (let from = 0; from < signs.length; from++) {
    const sign = signs[from];
    if (sign === 0) continue;
    let to = from + 1;
    // A board that writes down only what flows leaves its rests out.
    while (to < signs.length && signs[to] === sign && timesS[to] - timesS[to - 1] < LONGEST_PAUSE_S) to++;
    runs.push({ from, to, sign: sign > 0 ? 1 : -1 });
    from = to - 1;
  }
  return runs;
}

/**
 * The pieces of drive, those together between which there is only a short rest. `turns`: whether the sign tells the way
 * back, in which case it parts them, too.
 */
function stretchesOf(
  timesS: Float64Array,
  runs: readonly Run[],
): { stretches: SampleRange[][]; turns: boolean } {
  const stretches: SampleRange[][] = [];
  let last: { from: number; to: number; sign: 1 | -1 } | undefined;
  let turns = false;
  for (const run of runs) {
    const pauseS = last ? timesS[run.from] - timesS[last.to - 1] : Number.POSITIVE_INFINITY;
    const lasting = timesS[run.to - 1] - timesS[run.from] >= SHORTEST_REVERSAL_S;
    const other = last !== undefined && run.sign !== last.sign;
    if (other && lasting) turns = true;
    if (last === undefined || pauseS >= LONGEST_PAUSE_S || (other && lasting)) {
      last = { ...run };
      stretches.push([last]);
    } else if (pauseS >= SHORTEST_TURN_S) {
      last = { ...run, sign: last.sign };
      stretches.at(-1)?.push(last);
    } else last.to = run.to;
  }
  return { stretches, turns };
}

function joined(pieces: readonly SampleRange[]): SampleRange {
  return { from: pieces[0].from, to: pieces[pieces.length - 1].to };
}

function withoutSigns(
  timesS: Float64Array,
  sides: readonly RecordedSide[],
  stretches: readonly SampleRange[][],
): SampleRange[] {
  const driven = stretches.map((ranges) =>
    ranges.map((range, i) => ({
      drivenS: timesS[range.to - 1] - timesS[range.from],
      stalled: endsStalled(timesS, sides, range),
      restS: i === 0 ? LONGEST_PAUSE_S : timesS[range.from] - timesS[ranges[i - 1].to - 1],
    })),
  );
  const usualS = usualStrokeS(driven);
  return stretches.flatMap((ranges, n) => {
    const begins = strokesOfPieces(driven[n], usualS);
    return begins.map((begin, i) => joined(ranges.slice(begin, begins[i + 1])));
  });
}

/** From `start` on in steps of `step` while within the margin, no further than `end`; as an edge of a range. */
function reach(timesS: Float64Array, start: number, step: 1 | -1, end: number): number {
  let i = start;
  if (step < 0) {
    while (i > end && timesS[start] - timesS[i - 1] <= MARGIN_S) i--;
    return i;
  }
  while (i + 1 < end && timesS[i + 1] - timesS[start] <= MARGIN_S) i++;
  return i + 1;
}

function middle(from: number, to: number): number {
  return Math.floor((from + to) / 2);
}
