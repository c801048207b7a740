import type { Judgement, StrokeEvent } from '../../../analysis/history.ts';
import { MEASURE_INDEX, MEASURES, measureValue } from '../../../analysis/measures.ts';
import type { Direction, RoomDescription } from '../../../analysis/trace.ts';
import { inSinglePrecision } from './inSinglePrecision.ts';

/** One row of `measures`: the values of one side of one stroke, by index of MEASURES. */
export interface MeasureRow {
  readonly side: string;
  readonly direction: Direction;
  readonly placed_at: string;
  readonly stroke_id: string;
  readonly value: readonly (number | null)[];
  readonly expected: readonly (number | null)[];
  readonly adjusted: readonly (number | null)[];
  /** Bit `i`: whether the measure with index `i` lies beyond its limits. */
  readonly beyond: number;
}

/** A row for each side that was recorded; none for a stroke that could not be measured. */
export function measureRows(event: StrokeEvent, judgement: Judgement, room: RoomDescription): MeasureRow[] {
  const { analysis } = event;
  if (analysis.status !== 'done') return [];
  return room.sides
    .filter((side) => Object.hasOwn(analysis.sides, side))
    .map((side) => {
      const ofSide = judgement.expectations.filter((one) => one.side === side);
      const said = new Map(ofSide.map((one) => [one.measure, one]));
      return {
        side,
        direction: analysis.direction,
        placed_at: new Date(event.atMs).toISOString(),
        stroke_id: event.strokeId,
        value: MEASURES.map(({ name }) => measureValue(analysis, name, side)),
        expected: MEASURES.map(({ name }) => inSinglePrecision(said.get(name)?.expected ?? null)),
        adjusted: MEASURES.map(({ name }) => inSinglePrecision(said.get(name)?.adjusted ?? null)),
        beyond: ofSide.reduce(
          (bits, { measure, beyond }) => bits | (Number(beyond) << MEASURE_INDEX[measure]),
          0,
        ),
      };
    });
}
