import type { StrokeEvent } from '../../history.ts';
import type { Doubt, StrokeAnalysis } from '../../measures.ts';
import { nameAll, nameSide } from '../../names.ts';
import type { RoomState } from '../../roomState.ts';
import type { Warning } from '../../warning.ts';
import { isOverAfter, noteComing, saidAnew } from '../comesBack.ts';
import { type Finding, type FindingAnswer, NOTHING, openOn } from '../finding.ts';
import { flag, isLasting } from '../recent.ts';
import { MISDATED, type SaidOfRecord, STOPPED } from './saidOfRecord.ts';
import { ownScale, type SensorChanges, saidOfAll, saidOfSide, stillSaid } from './speaksAgainst.ts';
import { clockStands } from './stoppedClock.ts';

/** After this many strokes that nothing speaks against, a record is trusted again. */
const CLEAR_STROKES = 4;
/** Of its latest four strokes at least two must speak against a side's record: a single noisy one happens. */
const LATEST_STROKES = 4;
const LEAST_STROKES = 2;

/** What speaks against the record of a side (`side` null: of all sides, or against the logger's clock). */
interface SaidOfSubject {
  readonly side: string | null;
  readonly said: SaidOfRecord | undefined;
  /** On how many of the latest strokes something must speak against it. */
  readonly needed: number;
  /** Whether the warning is about the logger and not about one side's sensor. */
  readonly isOfLogger: boolean;
}

/**
 * The record itself is not to be trusted. Works from the doubts that measuring left, also on unusable strokes; sides
 * that were not recorded count for nothing. An impossible date is told at once; so are a wrong rate and a cut, because
 * it took several strokes to find them.
 */
export function sensorDoubt(state: RoomState, event: StrokeEvent, changes: SensorChanges): FindingAnswer {
  const { sides } = state.room;
  const { analysis, placedByArrival = false } = event;
  const stands = clockStands(state.clock, event);
  const shared = saidOfAll(analysis, changes, sides);
  const ofLogger = placedByArrival ? MISDATED : stands ? STOPPED : shared;
  const loggerNeeds = placedByArrival || stands || changes.rate !== null ? 1 : LEAST_STROKES;
  // With one side, what speaks against the logger and what speaks against the side is one warning.
  const isAlone = sides.length === 1;
  const answers = sides.map((side) => {
    const own = saidOfSide({ state, analysis, changes, shared }, side);
    const said =
      own ??
      (isAlone ? ofLogger : undefined) ??
      stillSaid(analysis, side, openOn(state, 'sensor-doubt', side)) ??
      ownScale(changes, side, sides);
    // A side without load draws so little that its record looks empty or noisy.
    const idles = openOn(state, 'dropped-load', side) !== undefined;
    if (idles || (said === undefined && !isRecorded(analysis, side))) return NOTHING;
    const isOfLogger = said !== undefined && said === ofLogger;
    const needed = isOfLogger ? loggerNeeds : said?.doubt === 'clipped' ? 1 : LEAST_STROKES;
    return keepUp(state, { side, said, needed, isOfLogger });
  });
  if (!isAlone)
    answers.push(keepUp(state, { side: null, said: ofLogger, needed: loggerNeeds, isOfLogger: true }));
  return {
    present: answers.flatMap(({ present }) => present),
    gone: answers.flatMap(({ gone }) => gone),
  };
}

/** Takes in what one stroke says of a record, and answers whether it is doubted. */
function keepUp(state: RoomState, { side, said, needed, isOfLogger }: SaidOfSubject): FindingAnswer {
  const flags = flag(state.recent, `sensor-doubt ${side ?? 'clock'}`, said !== undefined);
  const open = openOn(state, 'sensor-doubt', side);
  const memory = side === null ? state.doubtsOfAll : state.doubts[side];
  noteComing(memory, said !== undefined);
  if (open !== undefined && isOverAfter(memory, CLEAR_STROKES)) return { present: [], gone: [open] };
  if (said === undefined) return NOTHING;
  if (open === undefined && !isLasting(flags, needed, LATEST_STROKES)) return NOTHING;
  // A zero that is off says nothing new about a record that is already doubted for something worse.
  if (open !== undefined && said.doubt === 'offset' && isWorse(open)) return { present: [open], gone: [] };
  // What a single stroke proves shows on every stroke: the strokes before it do not count for how often it shows.
  if (open === undefined) saidAnew(memory, needed === 1 ? [] : flags);
  return { present: [finding(isOfLogger ? null : side, said, state.room.sides)], gone: [] };
}

function isRecorded(analysis: StrokeAnalysis, side: string): boolean {
  return analysis.status === 'done' && analysis.sides[side] !== undefined;
}

const HARMS_LITTLE: ReadonlySet<Doubt | undefined> = new Set(['offset', 'scale', 'reversed']);

/** Whether more is wrong with a record than its zero. */
export function isWorse({ evidence }: Warning): boolean {
  return !HARMS_LITTLE.has(evidence.doubt);
}

/** `side`: null for the logger, or all sides. */
function finding(side: string | null, said: SaidOfRecord, sides: readonly string[]): Finding {
  const { doubt, detail, restAmps } = said;
  const named = side === null ? nameAll(sides) : nameSide(side, sides);
  const itsClock = detail === MISDATED.detail ? 'The date of a stroke' : "The logger's clock";
  const whose = side === null && doubt === 'clock' ? itsClock : `The record of ${named}`;
  return {
    kind: 'sensor-doubt',
    side: side === null && sides.length === 1 ? sides[0] : side,
    severity: 'watch',
    headline: `${whose} cannot be trusted. ${detail}`,
    evidence: { doubt, detail, ...(restAmps === undefined ? {} : { restAmps }) },
  };
}
