import type { Random } from '../../../server/demo/simulator/random.ts';
import { CELLS } from './loadTable.ts';

const WAVES = 7;

/** How the friction goes along the travel: more towards one end as the room hangs out further, and uneven rails. */
export function drawCourse(random: Random): Float64Array {
  const slope = random.uniform(-0.08, 0.25);
  const course = new Float64Array(CELLS + 1).fill(1);
  for (let cell = 0; cell <= CELLS; cell++) course[cell] += slope * (cell / CELLS - 0.5);
  for (let wave = 1; wave <= WAVES; wave++) {
    const size = random.normal(0, 0.05) / Math.sqrt(wave);
    const turns = wave * random.uniform(0.7, 1.6);
    const phase = random.uniform(0, 2 * Math.PI);
    for (let cell = 0; cell <= CELLS; cell++) {
      course[cell] += size * Math.cos((2 * Math.PI * turns * cell) / CELLS + phase);
    }
  }
  const mean = course.reduce((sum, value) => sum + value, 0) / course.length;
  return course.map((value) => value / mean);
}
