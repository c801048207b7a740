import type { Judgement, StrokeEvent } from '../../../analysis/history.ts';
import { MEASURES, measureValue } from '../../../analysis/measures.ts';
import type { Direction, RoomDescription } from '../../../analysis/trace.ts';

/** One row of `measures`: the values of one side of one stroke, by index of MEASURES. */
export interface MeasureRow {
  readonly side: string;
  readonly direction: Direction;
  readonly placed_at: string;
  readonly stroke_id: string;
  readonly value: readonly (number | null)[];
  readonly expected: readonly (number | null)[];
  readonly adjusted: readonly (number | null)[];
  readonly beyond: readonly (boolean | null)[];
}

/** A row for each side that was recorded; none for a stroke that could not be measured. */
export function measureRows(event: StrokeEvent, judgement: Judgement, room: RoomDescription): MeasureRow[] {
  const { analysis } = event;
  if (analysis.status !== 'done') return [];
  return room.sides
    .filter((side) => Object.hasOwn(analysis.sides, side))
    .map((side) => {
      const said = new Map(
        judgement.expectations.filter((one) => one.side === side).map((one) => [one.measure, one]),
      );
      return {
        side,
        direction: analysis.direction,
        placed_at: new Date(event.atMs).toISOString(),
        stroke_id: event.strokeId,
        value: MEASURES.map(({ name }) => measureValue(analysis, name, side)),
        expected: MEASURES.map(({ name }) => said.get(name)?.expected ?? null),
        adjusted: MEASURES.map(({ name }) => said.get(name)?.adjusted ?? null),
        beyond: MEASURES.map(({ name }) => said.get(name)?.beyond ?? null),
      };
    });
}
