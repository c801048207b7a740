import { Random } from '../../../server/demo/simulator/random.ts';
import { drawTravels, type PlannedStroke, planStrokes } from './calendar.ts';
import { drawPlant } from './drawPlant.ts';
import type { FaultKind, PinionFault } from './faults/fault.ts';
import { FAULT_KINDS } from './faults/kinds.ts';
import { drawHabits, type Habits } from './habits.ts';
import type { Plant } from './plant.ts';

/** A room with its whole life drawn, before anything of it is simulated. */
export interface PinionMember {
  readonly seed: number;
  readonly strokes: number;
  readonly plant: Plant;
  readonly habits: Habits;
  readonly planned: readonly PlannedStroke[];
  readonly fault: PinionFault | null;
}

const FIRST_ONSET = 40;
const LAST_ONSET = 150;
const ROOMS_A_SEED = 100_000;

/** Every other room healthy, the faults in turn among the rest. */
export function drawPinionFleet(seed: number, count: number, strokes: number): PinionMember[] {
  return Array.from({ length: count }, (_, i) => {
    const kind = i % 2 === 0 ? null : FAULT_KINDS[((i - 1) / 2 + seed) % FAULT_KINDS.length];
    return drawMember(seed * ROOMS_A_SEED + i, strokes, kind);
  });
}

function drawMember(seed: number, strokes: number, kind: FaultKind | null): PinionMember {
  const random = new Random(seed);
  for (;;) {
    const plant = drawPlant(random);
    const planned = planStrokes(drawTravels(random), plant.supply, strokes, random);
    if (kind !== null && !kind.fits(plant, planned)) continue;
    const onset = random.integer(FIRST_ONSET, Math.max(FIRST_ONSET, Math.min(LAST_ONSET, strokes - 60)));
    const drawn = kind === null ? null : kind.draw({ plant, planned, onset, random });
    const fault = kind === null || drawn === null ? null : { services: [], ...drawn, name: kind.name };
    const habits = drawHabits(plant, strokes, fault?.startsStroke ?? null, random);
    return { seed, strokes, plant, habits, planned, fault };
  }
}
