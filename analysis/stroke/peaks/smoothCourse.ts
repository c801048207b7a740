import { medianOfStretch } from '../../statistics/median.ts';
import { ReusedArray } from '../../statistics/reusedArray.ts';
import { rollingMedian } from '../../statistics/rollingMedian.ts';

/** A wide window is taken over medians of blocks, about this many to half a window. */
const HALF_BLOCKS = 12;

const forRanks = new ReusedArray();

/**
 * The slow course of a signal: its moving median over `2 halfWindow + 1` samples (Tukey, 1977), as long as `values`,
 * which must hold no gaps. Wide windows are taken over block medians, with straight lines between the blocks' middles:
 * the course is slow, and this takes a tenth of the time.
 */
export function smoothCourse(values: Float64Array, halfWindow: number): Float64Array {
  const block = Math.floor(halfWindow / HALF_BLOCKS);
  if (block < 2) return rollingMedian(values, halfWindow);
  const count = Math.ceil(values.length / block);
  const medians = new Float64Array(count);
  const ranked = forRanks.copyOf(values);
  for (let b = 0; b < count; b++) {
    medians[b] = medianOfStretch(ranked, b * block, Math.min(values.length, (b + 1) * block));
  }
  const coarse = rollingMedian(medians, Math.round(halfWindow / block));
  const course = new Float64Array(values.length);
  for (let i = 0; i < course.length; i++) {
    const place = Math.min(count - 1, Math.max(0, (i + 0.5) / block - 0.5));
    const below = Math.floor(place);
    const above = Math.min(count - 1, below + 1);
    course[i] = coarse[below] + (place - below) * (coarse[above] - coarse[below]);
  }
  return course;
}
