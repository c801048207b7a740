import { median } from '../../statistics/median.ts';
import { medianAbsoluteDeviation } from '../../statistics/medianAbsoluteDeviation.ts';
import { rangeOf } from '../../statistics/range.ts';
import type { SideSignal } from '../signal/sideSignal.ts';
import { differenceNoise } from './rests.ts';

/** A record that begins with a start: its first moments stand so far above what follows, in parts of either. */
const START_S = 0.35;
const FEWEST_START_SAMPLES = 4;
const START_NOISES = 8;
const START_PART = 0.04;

/** Whether an edge begins with a motor's start, which no rest does: what follows is its running current. */
export function beginsWithStart(signal: SideSignal, edge: Float64Array, rough: number): boolean {
  if (edge.length < FEWEST_START_SAMPLES) return false;
  const level = median(edge);
  let highest = -Infinity;
  const start = Math.max(1, Math.ceil(START_S / signal.stepS));
  for (let i = 0; i < Math.min(start, edge.length); i++) highest = Math.max(highest, edge[i]);
  const clear = Math.max(START_NOISES * medianAbsoluteDeviation(edge), START_PART * (rough - level));
  return highest - level > clear;
}

/** A short edge whose readings differ by so much, in parts of what the motor draws and in the sensor's own noises. */
const RAGGED_S = 0.8;
const RAGGED_PART = 0.15;
const RAGGED_NOISES = 10;

/**
 * Whether a short edge is the first of a start that a controller lets rise slowly, over a slow logger's few samples, rather than
 * a rest. Its last sample may hold part of the start after a rest, too.
 */
export function isRagged(signal: SideSignal, edge: Float64Array, rough: number): boolean {
  const before = edge.subarray(0, Math.max(0, edge.length - 1));
  if (before.length < 2 || edge.length * signal.stepS > RAGGED_S) return false;
  const range = rangeOf(before);
  // The noise of the whole record only where the range asks for it: it is the dearest part of a look at an edge.
  return (
    range > RAGGED_PART * (rough - median(before)) && range > RAGGED_NOISES * differenceNoise(signal.amps)
  );
}

/** A start that a controller makes soft stands on a level of its own first, higher by this part of what the motor draws. */
const STEP_PART = 0.15;
/** So many samples that stand higher, all that follow them too, are another level. */
const FEWEST_STEPPED = 2;

/** What comes before the edge of a record steps up to another level, where it does: a rest has one. */
export function beforeStep(edge: Float64Array, rough: number): Float64Array {
  let highFrom = edge.length;
  const level = median(edge.subarray(0, Math.ceil(edge.length / 4)));
  while (highFrom > 0 && edge[highFrom - 1] - level > STEP_PART * (rough - level)) highFrom--;
  return edge.length - highFrom < FEWEST_STEPPED ? edge : edge.subarray(0, Math.max(0, highFrom - 1));
}
