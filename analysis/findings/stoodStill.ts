import { judgeMeasure } from '../baseline/judge.ts';
import type { StrokeEvent } from '../history.ts';
import type { DoneAnalysis, SideMeasures } from '../measures.ts';
import { wayOf } from '../names.ts';
import { channelOf, type RoomState } from '../roomState.ts';
import type { Direction } from '../trace.ts';
import type { Warning } from '../warning.ts';
import { type Finding, type FindingAnswer, type FindingContext, isOpen, NOTHING } from './finding.ts';
import { flag, isLasting } from './recent.ts';
import { isWhole } from './shortTravel/movementParts.ts';
import { sideConditions } from './strokeConditions.ts';

/**
 * A motor that stands draws V/R from the start on: no inrush stands above what follows, and all of it lies as high as its
 * start or its stop usually does, far above what it runs at. Copper that grows hot takes a little off; a supply that nobody
 * recorded differs from stay to stay. Guesses, no source, but for V/R.
 */
const MOST_INRUSH = 1.25;
const FLAT = 1.15;
const OF_STANDSTILL = 0.75;
const OF_USUAL_RUNNING = 1.6;
/**
 * Where neither start nor stop reads so many times the running current, nobody knows what V/R is: a slow logger sees the foot
 * of a start only, which a room that runs half as hard again reaches as well.
 */
const SEEN_STOP = 2;
const SEEN_START = 3;

/** What a stroke is known by before it has a context: what it is held against is not hidden for any doubt. */
type Judged = Pick<FindingContext, 'residual'>;

/** The sides that stood from start to end, their motors stalled: nothing that they drew was travel. */
export function stoodStill(
  state: RoomState,
  event: StrokeEvent,
  analysis: DoneAnalysis,
  judged: Judged,
): string[] {
  const stood = Object.entries(analysis.sides).filter(([side, measured]) => {
    const running = judged.residual(side, 'runningAmps')?.expected;
    if (running === undefined || !(isFlat(measured) || stallsAtOnce(measured, side, judged))) return false;
    if (bearsLostLoad(state, side, judged)) return false;
    const inrush = judged.residual(side, 'inrushAmps')?.expected ?? 0;
    const stop = usualStop(state, event, analysis, side);
    if (stop < SEEN_STOP * running && inrush < SEEN_START * running) return false;
    const standstill = Math.max(inrush, stop);
    const drawn = measured.endStopAmps ?? measured.runningAmps;
    return drawn >= Math.max(OF_STANDSTILL * standstill, OF_USUAL_RUNNING * running);
  });
  return stood.map(([side]) => side);
}

/** Rope that winds up and teeth that take up their play turn the motor so small a part of its usual time. */
const PLAY_PART = Math.log(0.06);

/** Whether the motor came to its stall when it had hardly begun to turn. */
function stallsAtOnce({ endStopAmps }: SideMeasures, side: string, judged: Judged): boolean {
  return endStopAmps !== null && (judged.residual(side, 'durationS')?.residual ?? 0) < PLAY_PART;
}

/** A side that draws less than this part of its normal drives hardly anything, natural logarithm; and a room went its way in about its usual time. Guesses, no source. */
const LOST_LOAD = Math.log(0.4);
const USUAL_TIME = 0.15;

/** Whether a motor that took its usual time drew what another side no longer does: it drove the room alone, all the way. */
function bearsLostLoad({ room }: RoomState, side: string, { residual }: Judged): boolean {
  const time = residual(side, 'durationS');
  if (time === null || Math.abs(time.residual) > USUAL_TIME) return false;
  return room.sides.some((other) => {
    const running = other === side ? null : residual(other, 'runningAmps');
    return running !== null && running.residual < LOST_LOAD;
  });
}

/** What the motor draws at its stop as a rule, amperes; 0: it comes to none, or that is not known yet. */
function usualStop(state: RoomState, event: StrokeEvent, analysis: DoneAnalysis, side: string): number {
  const channel = channelOf(state, side, analysis.direction);
  if (channel === undefined) return 0;
  const conditions = sideConditions(state, event, analysis, side);
  const reading = { measure: 'endStopAmps', value: 0, conditions, atMs: event.atMs, zero: 0 } as const;
  return judgeMeasure(channel, reading)?.expected ?? 0;
}

function isFlat({ inrushAmps, runningAmps, runningAmpsP90, endStopAmps }: SideMeasures): boolean {
  return (
    endStopAmps === null && inrushAmps <= MOST_INRUSH * runningAmps && runningAmpsP90 <= FLAT * runningAmps
  );
}

/**
 * What a room that did not move says, or one of which `stood` alone did not. Whoever holds the switch on, or presses it
 * again, after the room came to that end stalls it as well, and means no harm: `cameFrom` is the way that it moved last,
 * null where that is not known.
 */
export function notMoving(
  state: RoomState,
  analysis: DoneAnalysis,
  judged: Judged,
  stood: readonly string[],
  cameFrom: Direction | null,
): FindingAnswer {
  const { direction } = analysis;
  // A weak battery explains whatever is slow, and it is said.
  if (isOpen(state, 'weak-supply')) return NOTHING;
  if (stood.length < Object.keys(analysis.sides).length) {
    // The last piece of a way that is taken up again may end at once for the side that came to its stop first.
    const isLastPiece = cameFrom === direction && !goesFar(analysis, judged);
    return isLastPiece ? NOTHING : { present: [oneStands(stood[0], direction)], gone: [] };
  }
  const { travel } = state;
  const isPart = travel.direction === direction && !isWhole(travel.part, Math.max(1, travel[direction].took));
  const isAtEnd = cameFrom === null || (cameFrom === direction && !isPart);
  if (isAtEnd) return NOTHING;
  const flags = flag(state.recent, `short-travel ${direction}`, true);
  // Whoever only taps the switch at the end of a way that nobody recorded stalls it as well, but hardly twice.
  const isTap = Object.values(analysis.sides).every(
    ({ phases }) => phases.endS - phases.startS < LONGEST_TAP_S,
  );
  if (isTap && !isLasting(flags, 2, 2)) return NOTHING;
  const motors = stood.length > 1 ? 'the motors stall' : 'the motor stalls';
  const headline = `Going ${wayOf(direction)}, the room does not move: ${motors} from the start.`;
  return { present: [finding(direction, 'stop', headline)], gone: [] };
}

/** A switch that is held for less was only tapped: a guess, no source. */
const LONGEST_TAP_S = 1;
/** A side that was driven for this part of its usual time, natural logarithm, went far: a guess, no source. */
const FAR_PART = Math.log(0.5);

/** Whether some side was driven for half of its usual time or more. */
function goesFar({ sides }: DoneAnalysis, judged: Judged): boolean {
  return Object.keys(sides).some((side) => (judged.residual(side, 'durationS')?.residual ?? 0) > FAR_PART);
}

/** One side drags the other with it, or racks the room: its motor works against a stand as hard as it can. */
function oneStands(side: string, direction: Direction): Finding {
  return {
    kind: 'rising-draw',
    side,
    severity: 'stop',
    headline: `Going ${wayOf(direction)}, the ${side} side does not move while another one does: its motor stalls from the start.`,
    evidence: { stalled: true, stoodStill: true },
  };
}

/** A room that has moved since: no longer stuck, and not yet trusted. Null where nothing of the kind is open. */
export function movesAgain(open: Warning | undefined, direction: Direction): Finding | null {
  if (open?.evidence.stoodStill !== true || open.severity === 'watch') return null;
  const headline = `Going ${wayOf(direction)}, the room did not move on an earlier attempt; it has moved since.`;
  return finding(direction, 'watch', headline);
}

function finding(direction: Direction, severity: 'stop' | 'watch', headline: string): Finding {
  return {
    kind: 'short-travel',
    side: null,
    direction,
    severity,
    headline,
    evidence: { shortPercent: 100, stalled: true, stoodStill: true },
  };
}
