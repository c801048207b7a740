import { Random } from '../../../server/demo/simulator/random.ts';
import { drawRoom } from './drawRoom.ts';
import type { CableFault, Recipe } from './fault.ts';
import { RECIPES } from './faults/recipes.ts';
import { drawHabits } from './habits.ts';
import { type LivedStroke, liveThrough } from './life.ts';
import type { CableRoom } from './room.ts';

/** One room of the cable fleet: what it is, how it lives, and what goes wrong with it. */
export interface CableMember {
  readonly seed: number;
  readonly room: CableRoom;
  readonly life: readonly LivedStroke[];
  /** null: sound from first to last. */
  readonly fault: CableFault | null;
  readonly strokes: number;
}

/** Strokes before anything goes wrong: enough for any judge to learn from. */
const SOUND_STROKES = 30;
/** Of a room, a life and a fault together: some rooms cannot show some faults plainly. */
const MOST_DRAWS = 400;

/** Every other room is sound; the others take the faults by turns, so that each is as frequent. */
export function drawCableFleet(seed: number, count: number, strokes: number): CableMember[] {
  const random = new Random(seed);
  const turn = random.integer(0, RECIPES.length - 1);
  return Array.from({ length: count }, (_, at) =>
    drawMember(random.bits(), at % 2 === 0 ? null : RECIPES[(turn + (at >> 1)) % RECIPES.length], strokes),
  );
}

/** The fault's onset lies within the first seven tenths. */
function drawMember(seed: number, recipe: Recipe | null, strokes: number): CableMember {
  const random = new Random(seed);
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    const needs = recipe?.needs(random.fork()) ?? {};
    const room = drawRoom(random.fork(), needs);
    const drawn = drawHabits(random.fork(), needs.leastRateHz ?? 10);
    // Work on a room that is going wrong would be part of the fault's story, and each tells its own.
    const habits = recipe === null ? drawn : { ...drawn, services: 0 };
    const life = liveThrough(room, habits, strokes, random.fork());
    if (recipe === null) return { seed, room, life, fault: null, strokes };
    const onset = random.integer(SOUND_STROKES, Math.max(SOUND_STROKES, Math.floor(strokes * 0.7)));
    const fault = recipe.draw({ room, life, onset, random: random.fork() });
    if (fault !== null) return { seed, room, life, fault, strokes };
  }
  throw new RangeError(`No room of ${strokes} strokes can show ${recipe?.name} plainly.`);
}
