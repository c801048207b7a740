import type { StrokeEvent } from '../history.ts';
import { MEASURE_INDEX, MEASURES } from '../measures.ts';
import { squaresWithin } from '../statistics/moderatedVariance.ts';
import { DIRECTIONS, type Direction, type RoomDescription } from '../trace.ts';
import { type AtReference, atReference } from './atReference.ts';
import { changedRanges } from './changedRanges.ts';
import type { ComparedGroup, ComparedStroke } from './compared.ts';
import { compareSentence } from './compareSentence.ts';
import { correlationEvidence, correlationWeights } from './correlationWeights.ts';
import { leavesZero, levelsOfRoom } from './levelsOfRoom.ts';
import { shiftOf } from './measureShift.ts';
import { meanProfile, profileBand } from './profileBand.ts';
import { roomSpread } from './roomSpread.ts';
import { type ShapeChange, shapeChanges } from './shapeChange.ts';
import type { ShiftInterval, StrokeSpread } from './shiftInterval.ts';
import { USUAL_CORRELATION } from './strokeCorrelation.ts';
import { dependenceFactors, strokeDependence } from './strokeDependence.ts';

/** What a comparison says: in a sentence, by side and direction, and how it was reckoned. */
export interface SpanComparison {
  readonly sentence: string;
  readonly groups: ComparedGroup[];
  readonly method: string;
}

/** So many strokes of a side before the work and after it, of both directions together, are enough for an answer. */
const ENOUGH = 2;
const RUNNING = MEASURE_INDEX.runningAmps;
/**
 * Of rooms that did not change 5 % may be said to have: the most of it for the running current of all sides and directions,
 * the rest for the places of their travel, which stand out from what strokes differ by there as a rule. A choice, no source.
 */
const ERROR_RATE = { level: 0.04, places: 0.01 };

const METHOD =
  'Each stroke is brought to 12.6 V of a 12 V system and 20 °C by the usual slopes and those that the strokes show; what these ' +
  'leave open counts as uncertainty. Shift: the median of all differences between a stroke after and one before (Hodges and ' +
  "Lehmann); interval: exact ranks where they reach 95 %, else Student's t with the room's pooled spread (Smyth), wider for " +
  'what neighbouring strokes share, by what the room shows (Patterson and Thompson). Places: the largest change of a part of the current, by permutation (Westfall and Young), ' +
  "with few strokes by Student's t (Dunn). Each interval is of 95 % by itself; a change is called sure where it holds against all " +
  'sides and directions (Holm), so that of rooms that did not change one in twenty is said to have.';

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
  const found = room.sides.flatMap((side) => {
    const isEnough = [before, after].every(
      (events) => DIRECTIONS.reduce((count, way) => count + strokesOf(events, side, way).length, 0) >= ENOUGH,
    );
    return DIRECTIONS.map((direction) =>
      gather({
        side,
        direction,
        isEnough,
        before: strokesOf(before, side, direction),
        after: strokesOf(after, side, direction),
        nominalVolts: room.nominalVolts,
      }),
    );
  });
  const weights = MEASURES.map((_, measure) =>
    correlationWeights(found.map(({ correlations }) => correlations[measure])),
  );
  const spreads = found.map((group) => spreadsOf(group, found, weights));
  const told = found.filter(({ isEnough, before, after }) => isEnough && before.length * after.length > 0);
  const shapes = shapeChanges(found, ERROR_RATE.places / Math.max(1, told.length));
  const levels = levelsOfRoom(
    found.map(({ values }, index) => ({ values: values[RUNNING], spread: spreads[index][RUNNING] })),
    ERROR_RATE.level,
  );
  const groups = found.map((group, index) =>
    compareGroup(group, { spreads: spreads[index], shape: shapes[index], level: levels[index] }),
  );
  return { sentence: compareSentence(groups, room.sides), groups, method: METHOD };
}

interface Span {
  readonly side: string;
  readonly direction: Direction;
  readonly isEnough: boolean;
  readonly before: readonly ComparedStroke[];
  readonly after: readonly ComparedStroke[];
  readonly nominalVolts: number;
}

/** One side and direction, brought to the reference. */
function gather(span: Span) {
  const { side, direction, isEnough } = span;
  const values = MEASURES.map(({ name }) => atReference(name, span.before, span.after, span));
  const profilesOf = (strokes: readonly ComparedStroke[]) =>
    strokes.map((stroke) => profileOf(stroke, side, values[RUNNING]));
  const times = (strokes: readonly ComparedStroke[]) => strokes.map(({ event }) => event.atMs);
  const timesOfBoth = [times(span.before), times(span.after)] as const;
  return {
    side,
    direction,
    isEnough,
    values,
    squares: values.map((at) => squaresWithin(at.before, at.after)),
    correlations: correlationEvidence(values),
    factors: dependenceFactors(...timesOfBoth),
    dependence: dependenceFactors(...timesOfBoth, [USUAL_CORRELATION])[0],
    supplyIsKnown: [...span.before, ...span.after].every(({ analysis }) => analysis.supplyVolts !== null),
    before: profilesOf(span.before),
    after: profilesOf(span.after),
  };
}
type Gathered = ReturnType<typeof gather>;

/** How far the strokes of one side and direction spread, measure by measure, and how they hang together. */
function spreadsOf(
  group: Gathered,
  all: readonly Gathered[],
  weights: readonly (readonly number[])[],
): StrokeSpread[] {
  const others = all.filter((other) => other !== group);
  return MEASURES.map(({ name }, index) => ({
    spread: roomSpread(
      name,
      group.squares[index],
      others.map(({ squares }) => squares[index]),
      group.supplyIsKnown,
    ),
    dependence: strokeDependence(group.factors, weights[index]),
  }));
}

interface Found {
  readonly spreads: readonly StrokeSpread[];
  readonly shape: readonly ShapeChange[];
  /** Of the running current, beside those of the other sides and directions. */
  readonly level: ShiftInterval | null;
}

function compareGroup(group: Gathered, { spreads, shape, level }: Found): ComparedGroup {
  const { side, direction, values, before, after, isEnough } = group;
  return {
    side,
    direction,
    strokesBefore: before.length,
    strokesAfter: after.length,
    shifts: MEASURES.map((measure, index) => shiftOf(measure, values[index], spreads[index], isEnough)),
    levelIsSure: isEnough && leavesZero(level),
    changedBins: isEnough ? changedRanges({ before, after, shape, level }) : [],
    profileBefore: meanProfile(before),
    profileAfter: meanProfile(after),
    bandBefore: profileBand(before),
    bandAfter: profileBand(after),
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
