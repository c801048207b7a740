import type { NormalSide, TravelTrace } from '../../api/types.ts';
import type { NumberedMark } from '../drawn/marks.ts';
import type { Overlay, ProfileLine } from './profileLine.ts';

/** What a chart by travel shows of one stroke. */
export interface TravelPicture {
  /** All sides of the room, in its order: a side's place in it is its look. */
  readonly sides: readonly string[];
  readonly lines: readonly ProfileLine[];
  readonly travel: TravelTrace | null;
  readonly normal: ReadonlyMap<string, NormalSide>;
  readonly overlays: readonly Overlay[];
  readonly marks: readonly NumberedMark[];
  /** Places where the gear has made another whole turn, 0 to 1; empty where gear or travel is not known. */
  readonly turns: readonly number[];
}
