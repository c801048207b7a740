import {
  type LabelledFault,
  type LabelParts,
  labelOf,
} from '../../../../server/demo/simulator/faults/fault.ts';
import type { StrokeCondition } from '../condition.ts';
import type { Movement } from '../movements.ts';
import type { ToldService } from '../nuisances.ts';
import type { Random } from '../random.ts';
import type { RecorderRoom } from '../room.ts';

/** A fault as it grows in one room. */
export interface RecorderFault extends LabelledFault {
  readonly services: readonly ToldService[];
  /** The room that bears it: a heavy room was built so, a supply fault needs a supply reading. */
  readonly room: RecorderRoom;
  readonly change: (condition: StrokeCondition, movement: Movement, random: Random) => StrokeCondition;
}

/** A fault that can be drawn for the rooms that it fits. */
export interface FaultKind {
  readonly name: string;
  readonly fits: (room: RecorderRoom) => boolean;
  readonly draw: (room: RecorderRoom, onsetStroke: number, random: Random) => RecorderFault;
}

/** A fault with the label's usual blanks, which changes every stroke from its onset on. */
export function plan(
  name: string,
  room: RecorderRoom,
  label: LabelParts & { readonly onsetStroke: number },
  change: RecorderFault['change'],
  others: Partial<Pick<RecorderFault, 'startsStroke' | 'services'>> = {},
): RecorderFault {
  const startsStroke = others.startsStroke ?? label.onsetStroke;
  return {
    name,
    room,
    startsStroke,
    services: others.services ?? [],
    label: labelOf(label.onsetStroke, label),
    change: (condition, movement, random) =>
      movement.index < startsStroke ? condition : change(condition, movement, random),
  };
}

export const always = () => true;

export const hasTwoSides = ({ motors }: RecorderRoom) => motors.length === 2;
