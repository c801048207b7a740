import { Random } from '../../../server/demo/simulator/random.ts';
import { drawRoom } from './drawRoom.ts';
import type { WindingFault } from './fault.ts';
import { FAULT_RECIPES } from './faults/recipes.ts';
import type { WindingRoom } from './room.ts';
import { drawVariants, type Variants } from './variants.ts';

/** A room of the fleet with its life. */
export interface WindingMember {
  readonly seed: number;
  readonly room: WindingRoom;
  readonly fault: WindingFault | null;
  readonly variants: Variants;
  readonly strokes: number;
}

/** `count` rooms, every second one faulty, the faults coming in turn. */
export function drawWindingFleet(seed: number, count: number, strokes: number): WindingMember[] {
  const random = new Random(seed);
  return Array.from({ length: count }, (_, place) => {
    const own = random.bits() & 0x7fffffff;
    const recipe = place % 2 === 0 ? null : FAULT_RECIPES[((place - 1) / 2) % FAULT_RECIPES.length];
    return drawMember(own, recipe?.name ?? null, strokes);
  });
}

/** One room by its seed and the name of its fault; null: healthy. */
export function drawMember(seed: number, faultName: string | null, strokes: number): WindingMember {
  const recipe = FAULT_RECIPES.find(({ name }) => name === faultName) ?? null;
  if (recipe === null && faultName !== null) throw new Error(`There is no fault ${faultName}.`);
  const random = new Random(seed);
  const drawn = drawRoom(random.fork(), recipe?.needs);
  const variants = drawVariants(strokes, random.fork());
  const fault = recipe?.draw(drawn, random.fork(), strokes) ?? null;
  return { seed, room: drawn, fault, variants, strokes };
}
