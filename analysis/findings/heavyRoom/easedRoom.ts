import { median } from '../../statistics/median.ts';
import type { Warning } from '../../warning.ts';
import { type FindingContext, openOf } from '../finding.ts';
import { flag } from '../recent.ts';
import { overModelLimit } from './heavyForModel.ts';
import { loadOf, OVERLOADED_WITH_MUCH, shouldNeed } from './heavyLoad.ts';
import { withoutCold } from './noteHeavy.ts';

/** A mend takes off at least so much that this part is left: neither weather nor the ground does that. A guess, no source. */
const EASED_PART = 0.8;
/** One light stroke may be one of a few centimetres, or one that somebody pushed. */
const EASED_STROKES = 4;
/**
 * A motor that turns by itself alone draws less than this part of its rating, or of what it draws stalled (makers' data sheets
 * of permanent-magnet gear motors: a tenth of the stall and less), and of what the other side does. The parts are guesses.
 */
const IDLE_OF_RATED = 0.3;
const IDLE_OF_STALL = 0.1;
const IDLE_OF_OTHER = 0.6;

/** What a stroke says of a room that was said to be heavy. */
export interface Eased {
  /** On this stroke it needs what it should. */
  readonly now: boolean;
  /** And has done so for so long that it was mended. */
  readonly lasts: boolean;
}

/** The stroke tells of no relief. */
export const NOT_EASED: Eased = { now: false, lasts: false };

/**
 * Whether a room that was said to be heavy was made lighter, whether or not anybody recorded that: every side that was heavy draws
 * far less than it did, and no more than it should. A lost load is another thing: it leaves one motor idling and the room to the
 * other. Takes the stroke in, once for each; a stroke that does not tell counts neither way.
 */
export function easedRoom(context: FindingContext): Eased {
  const { state, analysis } = context;
  const [open] = openOf(state, 'heavy-room');
  if (open === undefined) return NOT_EASED;
  const sides = heavySides(context, open).filter((side) => analysis.sides[side] !== undefined);
  const told = sides.map((side) => hasEased(context, open, side)).filter((eased) => eased !== null);
  if (told.length === 0) return NOT_EASED;
  const now = told.every(Boolean);
  const flags = flag(state.recent, 'eased-room', now).slice(-EASED_STROKES);
  return { now, lasts: flags.length === EASED_STROKES && flags.every(Boolean) };
}

/** No weather takes so much off a current, and a motor that is relieved of a load takes so much less time; natural logarithms, guesses. */
const LIGHTER = { runningAmps: -0.35, durationS: -0.1 };
/** Nobody said that it was heavy: three strokes each way must agree. */
const LIGHTER_STROKES = 6;
/** A single motor that draws no more than this part of its normal may turn by itself alone. A guess, no source. */
const IDLE_OF_NORMAL = 0.35;

/**
 * The same of a room of which nothing was said, as no rating and no stall told that it was heavy: all its motors draw far less
 * than normal at once, and take less time for it.
 */
export function lighterRoom(context: FindingContext): Eased {
  const { state, analysis, doubtful } = context;
  const { sides } = state.room;
  if (state.open.length > 0 || sides.some((side) => doubtful.has(side) || analysis.sides[side] === undefined))
    return NOT_EASED;
  const now = sides.every((side) => isLighter(context, side));
  const flags = flag(state.recent, 'eased-room', now);
  return { now, lasts: flags.length === LIGHTER_STROKES && flags.every(Boolean) };
}

function isLighter({ state, residual }: FindingContext, side: string): boolean {
  const [running, duration] = [residual(side, 'runningAmps'), residual(side, 'durationS')];
  if (running === null || duration === null || !running.beyond) return false;
  if (running.residual > LIGHTER.runningAmps || duration.residual > LIGHTER.durationS) return false;
  // Two motors do not lose their load at once.
  return state.room.sides.length > 1 || running.residual > Math.log(IDLE_OF_NORMAL);
}

/** The sides that were said to be heavy. */
export function heavySides({ state }: Pick<FindingContext, 'state'>, { side }: Warning): readonly string[] {
  return side === null ? state.room.sides : [side];
}

/** Null where the stroke does not tell: its record is in doubt, or the side was never heavy in this direction. */
function hasEased(context: FindingContext, open: Warning, side: string): boolean | null {
  const { state, analysis, event, direction, doubtful } = context;
  const former = state.heavy[side].amps[direction];
  if (doubtful.has(side) || former.length === 0) return null;
  const amps = withoutCold(analysis.sides[side].runningAmps, event);
  if (isWhatItShould(context, open, side, median(former))) return null;
  return (
    amps < EASED_PART * median(former) &&
    isWhatItShould(context, open, side, amps) &&
    !mayIdle(context, side, amps)
  );
}

/** Whether a side that draws so much draws no more than what it is told against. */
function isWhatItShould(
  { state }: FindingContext,
  { evidence }: Warning,
  side: string,
  amps: number,
): boolean {
  const { ratedAmps } = state.room;
  const { modelAmps, stallAmps } = evidence;
  const memory = state.heavy[side];
  if (modelAmps !== undefined) {
    const lower = Math.log(amps / median([...memory.amps.extend, ...memory.amps.retract]));
    const ofStroke = memory.above.map((one) => ({
      ...one,
      running: { ...one.running, above: one.running.above + lower },
    }));
    return overModelLimit(ofStroke) < 0;
  }
  if (ratedAmps === null && stallAmps !== undefined) return amps < OVERLOADED_WITH_MUCH * stallAmps;
  return amps < (ratedAmps ?? shouldNeed(state.room));
}

/** Whether a motor draws no more than one that turns nothing; of two sides the one that the other leaves far behind. */
function mayIdle({ state, analysis, event, direction }: FindingContext, side: string, amps: number): boolean {
  const others = Object.keys(analysis.sides).filter((other) => other !== side);
  if (others.length > 0)
    return others.some((other) => {
      const there = withoutCold(analysis.sides[other].runningAmps, event);
      const [own, theirs] = [side, other].map((name) => median(state.heavy[name].amps[direction]));
      const former = own / theirs;
      return amps / there < IDLE_OF_OTHER * Math.min(1, Number.isNaN(former) ? 1 : former);
    });
  if (state.room.ratedAmps !== null) return amps < IDLE_OF_RATED * state.room.ratedAmps;
  const { stallAmps } = loadOf(state.heavy[side], state.room);
  return amps < IDLE_OF_STALL * (Number.isNaN(stallAmps) ? state.heavy[side].mostAmps : stallAmps);
}
