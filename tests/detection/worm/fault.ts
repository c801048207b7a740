import type { ServiceKind } from '../../../analysis/trace.ts';
import { type LabelledFault, type LabelParts, labelOf } from '../../../server/demo/simulator/faults/fault.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';
import type { Condition, SideCondition } from './condition.ts';
import type { RoomNeeds } from './drawRoom.ts';
import type { LivedStroke } from './life.ts';
import type { Side, WormRoom } from './room.ts';

/** Something wrong with a room from a stroke on. */
export interface WormFault extends LabelledFault {
  /** Changes a stroke's sound condition; asked for every stroke from `startsStroke` on, in order. */
  readonly change: (condition: Condition, index: number, lived: LivedStroke, random: Random) => void;
  /** Work that is part of its story, done before that stroke. */
  readonly service: {
    readonly beforeStroke: number;
    readonly kind: ServiceKind;
    readonly side: string | null;
  } | null;
}

/** Where and when a fault is drawn. */
export interface Occasion {
  readonly room: WormRoom;
  readonly life: readonly LivedStroke[];
  /** First stroke that bears it. */
  readonly onset: number;
  readonly random: Random;
}

/** A kind of fault: which room it needs, and how it comes out there. */
export interface Recipe {
  readonly name: string;
  readonly needs: (random: Random) => RoomNeeds;
  readonly draw: (occasion: Occasion) => WormFault;
}

export function planFault(
  name: string,
  onset: number,
  label: LabelParts,
  change: WormFault['change'],
): WormFault {
  return {
    name,
    startsStroke: onset,
    change,
    service: null,
    label: labelOf(onset, label),
  };
}

/** A side, or null for all alike, where the room has two. */
export function drawSideAt({ sides }: WormRoom, random: Random, allChance: number): number | null {
  if (sides.length === 1) return 0;
  return random.chance(allChance) ? null : random.integer(0, 1);
}

/** Its name in a warning: one side's, or null where two are alike. */
export function nameOf({ sides }: WormRoom, at: number | null): string | null {
  return at === null ? null : sides[at].name;
}

export function eachOf(
  condition: Condition,
  at: number | null,
  change: (side: SideCondition, at: number) => void,
): void {
  condition.sides.forEach((side, index) => {
    if (at === null || at === index) change(side, index);
  });
}

/** What a rise of the running current is as a rise of the push. */
export function pushFor({ runAmps, motor }: Side, currentRise: number): number {
  return (currentRise * runAmps) / (runAmps - motor.idleAmps);
}

/** The largest rise of a side's current that still leaves its motor well clear of a stall on a cold day. */
export function bearableRise({ runAmps, motor }: Side, nominalVolts: number): number {
  return (0.55 * nominalVolts) / motor.ohm / runAmps - 1;
}

/** The least rise that is plain to see where the weather is recorded, or is not. */
export function leastRise({ logger }: WormRoom): number {
  return logger.thermometer !== null ? 0.17 : 0.28;
}
