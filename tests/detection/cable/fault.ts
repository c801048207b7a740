import type { ServiceKind } from '../../../analysis/trace.ts';
import { type LabelledFault, type LabelParts, labelOf } from '../../../server/demo/simulator/faults/fault.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Condition, SideCondition } from './condition.ts';
import type { RoomNeeds } from './drawRoom.ts';
import type { LivedStroke } from './life.ts';
import type { CableRoom } from './room.ts';

/** Something wrong with a room from a stroke on. */
export interface CableFault extends LabelledFault {
  /** Changes a stroke's sound condition; asked for every stroke from `startsStroke` on, in order. */
  readonly change: (condition: Condition, index: number, lived: LivedStroke, random: Random) => void;
  /** Work that belongs to its story. */
  readonly service: { readonly beforeStroke: number; readonly kind: ServiceKind } | null;
}

export interface Occasion {
  readonly room: CableRoom;
  readonly life: readonly LivedStroke[];
  readonly onset: number;
  readonly random: Random;
}

/** A kind of fault: which room it needs, and what it does there; null: this room cannot show it plainly. */
export interface Recipe {
  readonly name: string;
  readonly needs: (random: Random) => RoomNeeds;
  readonly draw: (occasion: Occasion) => CableFault | null;
}

export function planFault(
  name: string,
  onset: number,
  label: LabelParts,
  change: CableFault['change'],
  service: CableFault['service'] = null,
): CableFault {
  return {
    name,
    startsStroke: onset,
    change,
    service,
    label: labelOf(onset, label),
  };
}

/** One side of two, or null for both alike; a single one is always itself. */
export function drawSideAt({ sides }: CableRoom, random: Random, bothChance: number): number | null {
  if (sides.length === 1) return 0;
  return random.chance(bothChance) ? null : random.integer(0, 1);
}

export function nameOf({ sides }: CableRoom, at: number | null): string | null {
  return at === null ? null : sides[at].name;
}

export function eachOf(condition: Condition, at: number | null, change: (side: SideCondition) => void): void {
  condition.sides.forEach((side, index) => {
    if (at === null || at === index) change(side);
  });
}

/** The least rise that is plain to see where the weather is on record, or is not. */
export function leastRise({ logger }: CableRoom): number {
  return logger.thermometer !== null ? 0.2 : 0.32;
}

/** The most by which a side's current may rise and leave its motor, breaker and controller at work on a cold day. */
export function mostRise({ sides: [{ runAmps, ohmAt20C }], facts, controller }: CableRoom): number {
  const ends = [(0.62 * facts.nominalVolts) / ohmAt20C];
  if (controller.breaker !== null) ends.push(0.85 * controller.breaker.holdAmps);
  if (controller.stopAmps !== null) ends.push(0.8 * controller.stopAmps);
  return Math.min(...ends) / runAmps - 1;
}
