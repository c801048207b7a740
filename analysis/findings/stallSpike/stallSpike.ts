import type { Spike } from '../../measures.ts';
import { nameSide } from '../../names.ts';
import { channelOf, type RoomState } from '../../roomState.ts';
import { comesAt, type RoomDescription } from '../../trace.ts';
import type { Warning } from '../../warning.ts';
import type { Dropped } from '../droppedLoad/dropped.ts';
import {
  type Finding,
  type FindingAnswer,
  type FindingContext,
  isOpen,
  NOTHING,
  openOf,
  openOn,
} from '../finding.ts';
import { isEchoOf } from './isEchoOf.ts';
import { explainsJolt, idlesMostly, JOLT, saidLost, togetherUntil } from './jolts.ts';
import { jumpTogether } from './jumpTogether.ts';
import { lastingPlace } from './lastingPlace.ts';
import { isOwnCourse, stillRises } from './ownCourse.ts';
import { fewestScattered, forgetSaid, haveStopped, keepSpikes, type SpikedStroke } from './spikeMemory.ts';
import { type PatternFound, spikePattern } from './spikePattern.ts';
import { isOfStart } from './startPeak.ts';
import { isOfShortWay, type Swing, sharedSwing, swingOf } from './swing.ts';
import { turnOf } from './turnOf.ts';
import { onTravel, passes, shortestWay, standingAfter, type WayCovered, wayCovered } from './wayCovered.ts';

/** At least this many of the latest strokes must show the pattern. */
const LEAST_STROKES = 3;
/** The part of the travel at either end where seals are pressed and let go: a spike means little there. */
const SEAL = 0.06;

/** Heights over the running current at which a spike is more than something to watch. */
const SERVICE_HEIGHT = 0.6;
const STOP_HEIGHT = 2;

/**
 * Short peaks of current in mid-travel, for each side. Peaks need no baseline: a healthy room has none but where its
 * own course rises. A swing once per turn of the gear that is too gentle for peaks is found against the side's usual
 * profile.
 *
 * `dropped`: sides that lost their load on this stroke; their profile tells nothing else. Where one side is without its
 * load, the other bears it, and jolts as it takes it over and gives it back; so does a side that runs alone.
 */
export function stallSpike(context: FindingContext, dropped: readonly Dropped[]): FindingAnswer {
  const present: Finding[] = [];
  const gone: FindingAnswer['gone'][number][] = [];
  const { state, analysis, direction } = context;
  const lost = [...dropped, ...saidLost(context)];
  const way = wayCovered(context, state.spikes.stands);
  state.spikes.stands = standingAfter(context, way);
  // Nobody knows which part of the way this stroke went over: its peaks have no place, and places without a peak prove
  // nothing.
  if (way === null) return NOTHING;
  const isWhole = way.outer - way.inner === 1;
  // A stroke that stops short has its profile squeezed: its places do not match those of the usual course.
  const isShort = isOpen(state, 'short-travel');
  for (const side of state.room.sides) {
    const measured = analysis.sides[side];
    if (measured === undefined || context.doubtful.has(side)) continue;
    const inTravel = idlesMostly(context, side, dropped) ? [] : peaksOf(context, side, way, lost);
    const usual = dropped.length > 0 || !isWhole ? [] : (channelOf(state, side, direction)?.profile ?? []);
    const open = openOn(state, 'stall-spike', side);
    if (inTravel.length === 0 && !isWhole && !passesSaid(way, open)) continue;
    const lasting = lastingPlace(context, side, isWhole && lost.length === 0 && !isShort);
    // A place that single strokes show needs no moving mean to last: they also show, and sooner, that it is over.
    const isTold = spikePattern(state.spikes.sides[side] ?? [], turnOf(state.room))?.pattern === 'same-place';
    const stroke: SpikedStroke = {
      direction,
      positions: inTravel.map((spike) => onTravel(way, spike.position)),
      unsure: way.unsure,
      heights: inTravel.map((spike) => spike.amps / measured.runningAmps - 1),
      swing: newSwing(context, measured.profile, usual),
      stillRises: (lasting !== null && !isTold) || (isWhole && risesWhereSaid(context, side, open)),
    };
    const strokes = keepSpikes(state.spikes, side, stroke, open !== undefined);
    if (openOn(state, 'dropped-load', side) !== undefined) continue;
    if (open !== undefined && haveStopped(state.spikes, side)) {
      forgetSaid(state.spikes, side);
      gone.push(open);
      continue;
    }
    const found = moreTelling(patternOf(strokes, state.room), lasting, open);
    const fewest = found?.pattern === 'scattered' ? fewestScattered(state.spikes, side) : 0;
    if (found !== null && (open !== undefined || found.strokes >= Math.max(LEAST_STROKES, fewest))) {
      present.push(finding(side, state.room, stillThere(found, open), strokes.length));
    }
  }
  const echoes = present.filter((each) => present.some((other) => isEcho(state, each, other)));
  const echoed = openOf(state, 'stall-spike').filter((open) => echoes.some(({ side }) => side === open.side));
  return { present: present.filter((each) => !echoes.includes(each)), gone: [...gone, ...echoed] };
}

function isEcho(state: RoomState, each: Finding, other: Finding): boolean {
  const [own, others] = [each, other].map(({ side }) => state.spikes.sides[side ?? ''] ?? []);
  return isEchoOf(each, other, {
    isSaid: openOn(state, 'stall-spike', each.side) !== undefined,
    together: jumpTogether(own, others, each.pattern === 'once-per-turn' ? turnOf(state.room) : null),
  });
}

/**
 * The peaks of a side that nothing explains: neither its own course, its start, a lost load, nor the end of another
 * side.
 */
function peaksOf(
  context: FindingContext,
  side: string,
  way: WayCovered,
  lost: readonly Dropped[],
): readonly Spike[] {
  const { analysis, direction } = context;
  const { spikes, runningAmps } = analysis.sides[side];
  const aloneFrom = togetherUntil(analysis, side);
  return spikes.filter(({ position, amps }) => {
    const height = amps / runningAmps - 1;
    const place = onTravel(way, position);
    return (
      [position, place].every((at) => at > SEAL && at < 1 - SEAL) &&
      !isOwnCourse(context, side, place, height) &&
      !isOfStart(context, side, { position, place }, height) &&
      !lost.some((stretch) => explainsJolt(stretch, side, place)) &&
      comesAt(position, direction) < aloneFrom - JOLT
    );
  });
}

/**
 * A swing of this stroke, unless it is only the usual profile laid over less than the whole way; null: there is none.
 */
function newSwing(
  context: FindingContext,
  profile: readonly (number | null)[],
  usual: readonly (number | null)[],
): Swing | null {
  const turn = turnOf(context.state.room);
  const swing = swingOf(profile, usual, turn);
  if (swing === null || isOfShortWay(profile, usual, turn, shortestWay(context))) return null;
  return swing;
}

/**
 * Chooses between what the peaks of single strokes show (`found`) and what lasts at one place (`lasting`). Peaks come
 * first. Where they are scattered or absent, the lasting place tells more, unless the open warning already names
 * another pattern.
 */
function moreTelling(
  found: PatternFound | null,
  lasting: PatternFound | null,
  open: Warning | undefined,
): PatternFound | null {
  if (lasting === null || (found !== null && found.pattern !== 'scattered')) return found;
  const before = open?.pattern ?? null;
  if (before === null || before === 'scattered') return lasting;
  return before === lasting.pattern && found === null
    ? { ...lasting, position: open?.position ?? null }
    : found;
}

/** The pattern of the spikes; where they have none, that of a swing which the latest strokes share. */
function patternOf(strokes: readonly SpikedStroke[], room: RoomDescription): PatternFound | null {
  const bySpikes = spikePattern(strokes, turnOf(room));
  if (bySpikes !== null && bySpikes.pattern !== 'scattered') return bySpikes;
  const swing = sharedSwing(strokes.map((stroke) => stroke.swing));
  if (swing === null) return bySpikes;
  return { pattern: 'once-per-turn', position: null, strokes: swing.strokes, height: 2 * swing.part };
}

/**
 * Keeps the pattern of an open warning where the latest strokes alone would tell less: some of them were too gentle for
 * peaks, or had one more for another reason; and of several teeth that were seen, only one may still show.
 */
function stillThere(found: PatternFound, open: Warning | undefined): PatternFound {
  const before = open?.pattern ?? null;
  if (open === undefined || before === null || before === 'scattered') return found;
  const tellsLess = found.pattern === 'scattered' || before === 'once-per-turn';
  return tellsLess ? { ...found, pattern: before, position: open.position } : found;
}

function risesWhereSaid(context: FindingContext, side: string, open: Warning | undefined): boolean {
  const { position = null, evidence } = open ?? {};
  return position !== null && stillRises(context, side, position, (evidence?.heightPercent ?? 0) / 100);
}

/**
 * Whether a stroke over a part of the way passed the place that the warning names, and so tells whether it still peaks.
 */
function passesSaid(way: WayCovered, open: Warning | undefined): boolean {
  const place = open?.position ?? null;
  return place !== null && passes(way, place, JOLT);
}

function finding(side: string, room: RoomDescription, found: PatternFound, looked: number): Finding {
  const { pattern, position, height } = found;
  const percent = Math.round(100 * height);
  const where = {
    'same-place': `at one place, ${Math.round(100 * (position ?? 0))} % of the way out`,
    'once-per-turn': 'once per turn of the gear',
    scattered: 'at changing places along the travel',
  }[pattern];
  return {
    kind: 'stall-spike',
    side,
    direction: null,
    position,
    pattern,
    severity: height >= STOP_HEIGHT ? 'stop' : height >= SERVICE_HEIGHT ? 'service' : 'watch',
    headline: `The current of ${nameSide(side, room.sides)} spikes by ${percent} % ${where}.`,
    evidence: {
      strokesWithSpikes: found.strokes,
      strokesLookedAt: looked,
      heightPercent: percent,
      position: position === null ? null : Math.round(1000 * position) / 1000,
    },
  };
}
