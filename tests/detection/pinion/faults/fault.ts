import type { LabelledFault } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Random } from '../../../../server/demo/simulator/random.ts';
import type { PlannedStroke } from '../calendar.ts';
import type { StrokeCondition } from '../condition.ts';
import type { PlannedService } from '../habits.ts';
import type { Plant } from '../plant.ts';

/** A room with a life before it, into which a fault is to come at `onset`. */
export interface Scene {
  readonly plant: Plant;
  readonly planned: readonly PlannedStroke[];
  readonly onset: number;
  readonly random: Random;
}

/** What a fault does to each stroke from its start on. */
export type Worsen = (
  condition: StrokeCondition,
  stroke: PlannedStroke,
  index: number,
  random: Random,
) => void;

export interface PinionFault extends LabelledFault {
  /** Work that belongs to the fault's own story. */
  readonly services: readonly PlannedService[];
  readonly worsen: Worsen;
}

/** A fault that can befall the rooms that it fits. */
export interface FaultKind {
  readonly name: string;
  readonly fits: (plant: Plant, planned: readonly PlannedStroke[]) => boolean;
  readonly draw: (scene: Scene) => Omit<PinionFault, 'name' | 'services'> & { services?: PlannedService[] };
}

export const isPair = ({ sides }: Plant): boolean => sides.length > 1;

/** Sliding force that raises a side's running current by this part, newtons. */
export function dragFor({ sides }: Plant, side: number, part: number): number {
  const { motor, runningAmps } = sides[side];
  return part * runningAmps * motor.voltsPerSpeed * motor.efficiency;
}

/** Current of the side at standstill, amperes. */
export function stallAmps({ sides, facts }: Plant, side: number): number {
  return (facts.nominalVolts * 1.05) / sides[side].motor.ohms;
}

/** Index of the first stroke from `onset` on of which `is` holds. */
export function firstFrom(
  planned: readonly PlannedStroke[],
  onset: number,
  is: (stroke: PlannedStroke) => boolean,
): number {
  const found = planned.findIndex((stroke, index) => index >= onset && is(stroke));
  return found === -1 ? onset : found;
}
