import { Random } from '../../../server/demo/simulator/random.ts';
import { PLAIN_FAULTS, type PlainFault } from './faults.ts';
import { drawPlainRoom, type PlainRoom } from './room.ts';
import { drawVariants, type PlainVariants } from './variants.ts';

export interface PlainMember {
  readonly seed: number;
  readonly room: PlainRoom;
  readonly fault: PlainFault | null;
  readonly variants: PlainVariants;
  readonly strokes: number;
}

/**
 * A fleet made otherwise than the demo's: currents written down directly instead of driven from a motor's equations,
 * friction that walks, noise with colour. What is found in both is not found because it was tuned to either. Every
 * second room bears a fault; the faults come in turn.
 */
export function drawPlainFleet(seed: number, count: number, strokes: number): PlainMember[] {
  const seeds = new Random(seed);
  return Array.from({ length: count }, (_, place): PlainMember => {
    const own = seeds.bits();
    const random = new Random(own);
    const kind = place % 2 === 0 ? null : PLAIN_FAULTS[((place - 1) / 2) % PLAIN_FAULTS.length];
    const room = drawPlainRoom(random.fork(), kind?.leastSides ?? 1);
    const onset = random.integer(Math.floor(strokes * 0.2), Math.floor(strokes * 0.5));
    const fault = kind === null ? null : kind.draw(room, random.fork(), onset);
    const variants = drawVariants(room, strokes, random.fork());
    return { seed: own, room, fault, variants, strokes };
  });
}
