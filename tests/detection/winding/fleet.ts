import { Random } from '../../../server/demo/simulator/random.ts';
import { drawRoom } from './drawRoom.ts';
import type { FaultRecipe, WindingFault } from './fault.ts';
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

/** A fleet begins this much further on in the list of faults for each seed. */
const RECIPES_PER_SEED = 7;

/** `count` rooms, every second one faulty, the faults coming in turn. */
export function drawWindingFleet(seed: number, count: number, strokes: number): WindingMember[] {
  const random = new Random(seed);
  return Array.from({ length: count }, (_, place) => {
    const own = random.bits() & 0x7fffffff;
    const turn = (place - 1) / 2 + RECIPES_PER_SEED * Math.abs(seed);
    return drawMember(own, place % 2 === 0 ? null : FAULT_RECIPES[turn % FAULT_RECIPES.length].name, strokes);
  });
}

/** One room by its seed and the name of its fault; null: healthy. */
export function drawMember(seed: number, faultName: string | null, strokes: number): WindingMember {
  const recipe = FAULT_RECIPES.find(({ name }) => name === faultName) ?? null;
  if (recipe === null && faultName !== null) throw new Error(`There is no fault ${faultName}.`);
  const random = new Random(seed);
  const room = drawRoom(random.fork(), recipe?.needs);
  const variants = drawVariants(strokes, random.fork());
  if (recipe === null) return { seed, room, fault: null, variants, strokes };
  const drawn = recipe.draw(room, random.fork(), strokes);
  const fault = curedLate(drawn, recipe, random.fork(), strokes);
  return { seed, room, fault, variants: withoutLateService(variants, fault), strokes };
}

const CURED_CHANCE = 0.35;

/** Some faults are found by somebody and mended, long after they began. */
function curedLate(
  fault: WindingFault,
  { cure }: FaultRecipe,
  random: Random,
  strokes: number,
): WindingFault {
  const untilStroke = fault.startsStroke + random.integer(30, 60);
  if (cure === undefined || !random.chance(CURED_CHANCE) || untilStroke > strokes - 16) return fault;
  const services = [...fault.services, { beforeStroke: untilStroke, kind: cure, side: fault.label.side }];
  return { ...fault, untilStroke, services };
}

/** A lubrication shortly before a fault or within it would hide how large the fault is. */
function withoutLateService(variants: Variants, fault: WindingFault): Variants {
  const isEarly = (variants.service?.beforeStroke ?? 0) < fault.startsStroke - 12;
  return isEarly && fault.label.kind !== 'draw-rebound' ? variants : { ...variants, service: null };
}
