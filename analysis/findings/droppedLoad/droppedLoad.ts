import { isReady } from '../../baseline/channel.ts';
import { nameSide } from '../../names.ts';
import { channelOf } from '../../roomState.ts';
import { DIRECTIONS } from '../../trace.ts';
import { type Finding, type FindingAnswer, type FindingContext, openOn } from '../finding.ts';
import { isOverSince, keepHowOften } from '../howOften.ts';
import { flag, isLasting, isOver } from '../recent.ts';
import type { Dropped } from './dropped.ts';
import { isWhole, keyOf } from './droppedOn.ts';
import { lostMoments } from './lostMoments.ts';

/**
 * A warning opens if at least this many of the latest four strokes show a lost load. It is over after this many in a
 * row that do not, and as many of each direction. Guesses, no source.
 */
const LEAST_STROKES = 3;
const CLEAR_STROKES = 4;
const CLEAR_EACH_WAY = 2;

/**
 * One side runs with hardly any load for part or all of the travel, or for moments: its gear or shoe does not drive.
 */
export function droppedLoad(context: FindingContext, dropped: readonly Dropped[]): FindingAnswer {
  const { state, analysis, direction } = context;
  const present: Finding[] = [];
  const gone: FindingAnswer['gone'][number][] = [];
  for (const side of state.room.sides) {
    if (analysis.sides[side] === undefined) continue;
    const found = dropped.find((other) => other.side === side);
    const moments = found === undefined ? lostMoments(context, side) : 0;
    const isLost = found !== undefined || moments > 0;
    const flags = flag(state.recent, `dropped-load ${side}`, isLost);
    const ofWay = flag(state.recent, keyOf(side, direction), isLost);
    const open = openOn(state, 'dropped-load', side);
    keepHowOften(state.dropped[direction], side, open !== undefined, ofWay);
    // A loss that one direction alone shows is not over because the strokes of the other do not show it.
    const isOverEachWay = DIRECTIONS.every((way) => isOverSince(state.dropped[way][side], CLEAR_EACH_WAY));
    if (open !== undefined && isOver(flags, CLEAR_STROKES) && isOverEachWay) gone.push(open);
    // One direction alone opens a warning once its baseline is ready: its first strokes may have been odd ones.
    const channel = channelOf(state, side, direction);
    const told = channel !== undefined && isReady(channel) ? [flags, ofWay] : [flags];
    const lasts = told.some((latest) => isLasting(latest, LEAST_STROKES, 4));
    if (open === undefined && !lasts) continue;
    if (found !== undefined) present.push(finding(found, state.room.sides));
    else if (moments > 0) present.push(ofMoments(side, moments, state.room.sides));
  }
  return { present, gone };
}

function ofMoments(side: string, moments: number, sides: readonly string[]): Finding {
  return {
    kind: 'dropped-load',
    side,
    severity: 'service',
    headline: `The load of ${nameSide(side, sides)} is lost ${moments} times on the way, for a moment each: the motor may turn then without moving the room.`,
    evidence: { moments },
  };
}

function finding({ side, from, to }: Dropped, sides: readonly string[]): Finding {
  const whole = isWhole({ from, to });
  const percent = (part: number) => Math.round(100 * part);
  const where = whole
    ? 'over the whole travel'
    : `between ${percent(from)} % and ${percent(to)} % of the way out`;
  return {
    kind: 'dropped-load',
    side,
    position: whole ? null : (from + to) / 2,
    severity: whole ? 'stop' : 'service',
    headline: `There is hardly any load on ${nameSide(side, sides)} ${where}: the motor may turn there without moving the room.`,
    evidence: { from: Math.round(1000 * from) / 1000, to: Math.round(1000 * to) / 1000 },
  };
}
