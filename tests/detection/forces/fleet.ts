import { Random } from '../../../server/demo/simulator/random.ts';
import { drawForcesRoom } from './drawRoom.ts';
import type { ForcesFault, ForcesFaultKind } from './faults/fault.ts';
import { FORCES_FAULTS } from './faults/index.ts';
import type { ForcesRoom } from './room.ts';
import { drawVariants, type ForcesVariants } from './variants.ts';

export interface ForcesMember {
  readonly seed: number;
  readonly room: ForcesRoom;
  readonly fault: ForcesFault | null;
  readonly variants: ForcesVariants;
  readonly strokes: number;
  readonly years: number;
}

/** What is left of a history after a fault's onset, at least. */
const LEAST_AFTER = 18;
/** Strokes before a fault's onset, at least: the verdict is `learning` until eight each way. */
const LEAST_BEFORE = 20;

/**
 * A fleet of rooms whose currents follow from forces: Coulomb, viscous and breakaway friction, teeth, seals, slack and
 * tilt against two motors' circuits on a supply that gives way, read by clamps with converters. Its labels follow the
 * contract's words alone. Every second room bears a fault; the faults come in turn.
 */
export function drawForcesFleet(seed: number, count: number, strokes: number): ForcesMember[] {
  const seeds = new Random(seed);
  const turn = seeds.integer(0, FORCES_FAULTS.length - 1);
  return Array.from({ length: count }, (_, place): ForcesMember => {
    const own = seeds.bits();
    const kind = place % 2 === 0 ? null : FORCES_FAULTS[((place - 1) / 2 + turn) % FORCES_FAULTS.length];
    return drawMember(own, kind, strokes);
  });
}

function drawMember(seed: number, kind: ForcesFaultKind | null, most: number): ForcesMember {
  const random = new Random(seed);
  let room = drawForcesRoom(random.fork(), kind?.leastSides ?? 1);
  while (kind !== null && !kind.suits(room)) room = drawForcesRoom(random.fork(), kind.leastSides);
  const after = Math.max(LEAST_AFTER, kind?.leastAfter ?? 0);
  const least = Math.min(most, LEAST_BEFORE + (kind?.leastBefore ?? 0) + after);
  const strokes = Math.round(random.logUniform(least, most + 1));
  const first = LEAST_BEFORE + (kind?.leastBefore ?? 0);
  const onset = random.integer(first, Math.max(first, strokes - after));
  const fault = kind === null ? null : kind.draw(room, random.fork(), onset);
  const variants = drawVariants(room, strokes, random.fork());
  return { seed, room, fault, variants, strokes, years: random.uniform(1, 2) };
}
