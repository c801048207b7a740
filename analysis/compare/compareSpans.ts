import type { StrokeEvent } from '../history.ts';
import { MEASURE_NAMES, MEASURES } from '../measures.ts';
import { normalUpperQuantile } from '../statistics/normalQuantile.ts';
import { DIRECTIONS, type Direction, type RoomDescription } from '../trace.ts';
import { type AtReference, atReference } from './atReference.ts';
import { changedRanges } from './changedRanges.ts';
import type { ComparedGroup, ComparedStroke } from './compared.ts';
import { compareSentence } from './compareSentence.ts';
import { shiftOf } from './measureShift.ts';
import { meanProfile, profileBand } from './profileBand.ts';

/** What a comparison says: in a sentence, by side and direction, and how it was reckoned. */
export interface SpanComparison {
  readonly sentence: string;
  readonly groups: ComparedGroup[];
  readonly method: string;
}

/** So many strokes of a side before the work and after it, of both directions together, are enough for an answer. */
const ENOUGH = 2;
const RUNNING = MEASURE_NAMES.indexOf('runningAmps');
/** Of what the slopes leave open of a difference in weather or supply, as many standard deviations as 95 % take. */
const LEFT_OPEN = normalUpperQuantile(0.025);

const METHOD =
  'Each stroke is brought to 12.6 V of a 12 V system and 20 °C by the usual slopes and those that the strokes themselves show, and what ' +
  'these leave open counts as uncertainty. The shift is the median of all differences between a stroke after and ' +
  'one before (Hodges and Lehmann), with the exact rank interval where there are enough strokes for 95 % and ' +
  "otherwise Student's t with the spread usual for such rooms. Places along the travel are told by a permutation " +
  'test of the largest change (Westfall and Young), so that the whole travel has one error rate of 5 %.';

/**
 * Before against after, by side and direction; strokes that are excluded or unusable are left out. Two strokes on
 * each side of the work are enough for an answer with its uncertainty, also one out and one in; with fewer the shifts
 * are null, as they are of a direction that was not recorded both before and after.
 */
export function compareSpans(
  before: readonly StrokeEvent[],
  after: readonly StrokeEvent[],
  room: RoomDescription,
): SpanComparison {
  const { nominalVolts } = room;
  const groups = room.sides.flatMap((side) => {
    const isEnough = [before, after].every(
      (events) => DIRECTIONS.reduce((count, way) => count + strokesOf(events, side, way).length, 0) >= ENOUGH,
    );
    return DIRECTIONS.map((direction) => {
      const found = [before, after].map((events) => strokesOf(events, side, direction));
      return compareGroup(found[0], found[1], { side, direction, nominalVolts }, isEnough);
    });
  });
  return { sentence: compareSentence(groups, room.sides), groups, method: METHOD };
}

interface Compared {
  readonly side: string;
  readonly direction: Direction;
  readonly nominalVolts: number;
}

function compareGroup(
  earlier: readonly ComparedStroke[],
  later: readonly ComparedStroke[],
  compared: Compared,
  isEnough: boolean,
): ComparedGroup {
  const { side, direction } = compared;
  const values = MEASURES.map(({ name }) => atReference(name, earlier, later, compared));
  const running = values[RUNNING];
  const profiles = [earlier, later].map((strokes) =>
    strokes.map((stroke) => profileOf(stroke, side, running)),
  );
  return {
    side,
    direction,
    strokesBefore: earlier.length,
    strokesAfter: later.length,
    shifts: MEASURES.map((measure, index) => shiftOf(measure, values[index], isEnough)),
    changedBins: changedRanges(profiles[0], profiles[1], LEFT_OPEN * running.unsure),
    profileBefore: meanProfile(profiles[0]),
    profileAfter: meanProfile(profiles[1]),
    bandBefore: profileBand(profiles[0]),
    bandAfter: profileBand(profiles[1]),
  };
}

/** All of the travel follows weather and supply as the running current does: by one factor. */
function profileOf(
  { event, analysis }: ComparedStroke,
  side: string,
  { offsetOf }: AtReference,
): (number | null)[] {
  const factor = Math.exp(-offsetOf({ event, analysis }));
  return analysis.sides[side].profile.map((amps) => (amps === null ? null : amps * factor));
}

function strokesOf(events: readonly StrokeEvent[], side: string, direction: Direction): ComparedStroke[] {
  return events.flatMap((event) => {
    const { analysis } = event;
    if (event.excluded || analysis.status !== 'done') return [];
    return analysis.direction === direction && analysis.sides[side] !== undefined
      ? [{ event, analysis }]
      : [];
  });
}
