import { Random } from '../../../server/demo/simulator/random.ts';
import { drawRoom } from './drawRoom.ts';
import type { Recipe, WormFault } from './fault.ts';
import { RECIPES } from './faults/recipes.ts';
import { drawHabits } from './habits.ts';
import { type LivedStroke, liveThrough } from './life.ts';
import type { WormRoom } from './room.ts';

/** One room of the worm fleet: what it is, how it lives, and what goes wrong with it. */
export interface WormMember {
  readonly seed: number;
  readonly room: WormRoom;
  readonly life: readonly LivedStroke[];
  /** null: sound from first to last. */
  readonly fault: WormFault | null;
  readonly strokes: number;
}

/** Strokes before anything goes wrong: enough for any judge to learn from. */
const SOUND_STROKES = 24;

/** Every other room is sound; the others take the faults by turns, so that each is as frequent. */
export function drawWormFleet(seed: number, count: number, strokes: number): WormMember[] {
  const random = new Random(seed);
  const turn = random.integer(0, RECIPES.length - 1);
  return Array.from({ length: count }, (_, at) => {
    const recipe = at % 2 === 0 ? null : RECIPES[(turn + (at >> 1)) % RECIPES.length];
    return drawMember(random.bits(), recipe, strokes);
  });
}

function drawMember(seed: number, recipe: Recipe | null, strokes: number): WormMember {
  const random = new Random(seed);
  const room = drawRoom(random.fork(), recipe?.needs(random.fork()) ?? {});
  const drawn = drawHabits(random.fork(), room);
  // Work on a room that is going wrong would be part of the fault's story, and each tells its own.
  const habits = recipe === null ? drawn : { ...drawn, services: 0 };
  const life = liveThrough(room, habits, strokes, random.fork());
  const onset = random.integer(SOUND_STROKES, Math.max(SOUND_STROKES, Math.floor(strokes * 0.75)));
  const fault = recipe?.draw({ room, life, onset, random: random.fork() }) ?? null;
  return { seed, room, life, fault, strokes };
}
