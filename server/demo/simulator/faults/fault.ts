import type { Direction } from '../../../../analysis/trace.ts';
import type { SpikePattern, WarningKind } from '../../../../analysis/warning.ts';
import type { StrokeCondition } from '../condition.ts';
import type { PlannedService } from '../plannedService.ts';
import type { Random } from '../random.ts';
import type { SimulatedRoom } from '../room.ts';

/** What a perfect judge would say of a faulty history. */
export interface FaultLabel {
  readonly kind: WarningKind;
  /** Kinds that a fair judge may say as well, or before. */
  readonly alsoFits: readonly WarningKind[];
  readonly side: string | null;
  readonly direction: Direction | null;
  readonly position: number | null;
  readonly pattern: SpikePattern | null;
  /** Index of the first stroke that bears the fault, 0 first. */
  readonly onsetStroke: number;
  /** How bad, in the fault's own measure: a part of the current, of the share, of the load, or seconds. */
  readonly severity: number;
}

/** A fault in a room's history, whatever it does to a stroke. */
export interface LabelledFault {
  readonly name: string;
  readonly label: FaultLabel;
  /** First stroke that it changes; the label's onset may be later (a rebound begins with its service). */
  readonly startsStroke: number;
}

/** A fault and what it does to each stroke from its onset on. */
export interface PlannedFault extends LabelledFault {
  /** First stroke after a repair has cured it; infinity: never. */
  readonly untilStroke: number;
  /** Work that belongs to the fault's own story. */
  readonly services: readonly PlannedService[];
  readonly change: (condition: StrokeCondition, strokeIndex: number, random: Random) => StrokeCondition;
}

/** A fault that can be drawn for any room that has enough sides. */
export interface FaultKind {
  readonly name: string;
  readonly kind: WarningKind;
  readonly leastSides: 1 | 2;
  readonly draw: (room: SimulatedRoom, random: Random, onsetStroke: number) => PlannedFault;
}

/** When a fault begins and is cured. */
export interface FaultSpan {
  readonly onsetStroke: number;
  readonly untilStroke?: number;
}

/** What a label says beyond the blanks of a fault of the whole room in both directions. */
export type LabelParts = Pick<FaultLabel, 'kind' | 'severity'> & Partial<FaultLabel>;

export function labelOf(onsetStroke: number, parts: LabelParts): FaultLabel {
  return { alsoFits: [], side: null, direction: null, position: null, pattern: null, onsetStroke, ...parts };
}

export function planFault(
  name: string,
  span: FaultSpan,
  label: LabelParts,
  change: PlannedFault['change'],
  services: readonly PlannedService[] = [],
): PlannedFault {
  return {
    name,
    startsStroke: span.onsetStroke,
    untilStroke: span.untilStroke ?? Number.POSITIVE_INFINITY,
    services,
    change,
    label: labelOf(span.onsetStroke, label),
  };
}

interface RoomWithSides {
  readonly facts: { readonly sides: readonly string[] };
}

/** The name to say for a side, or for both alike (null, save that a room with one side is named by it). */
export function namedSide({ facts }: RoomWithSides, sideIndex: number | null): string | null {
  if (facts.sides.length === 1) return facts.sides[0];
  return sideIndex === null ? null : facts.sides[sideIndex];
}

export function anySide({ facts }: RoomWithSides, random: Random): number {
  return random.integer(0, facts.sides.length - 1);
}

/** The factor on a side's load that raises its running current by a given part. */
export function loadFactor(room: SimulatedRoom, sideIndex: number, currentRise: number): number {
  const amps = room.runningAmps[sideIndex];
  return 1 + (currentRise * amps) / (amps - room.motors[sideIndex].noLoadAmps);
}

/** `values` with one of them changed. */
export function withAt<Item>(values: readonly Item[], index: number, change: (value: Item) => Item): Item[] {
  return values.map((value, at) => (at === index ? change(value) : value));
}
