import { comesToStop } from '../../measures.ts';
import { otherWay } from '../../trace.ts';
import { type FindingAnswer, type FindingContext, NOTHING } from '../finding.ts';
import { isOverSince, keepHowOften } from '../howOften.ts';
import { flag, isLasting, isOver } from '../recent.ts';
import { movesAgain } from '../stoodStill.ts';
import { noteFirstShort } from './firstShort.ts';
import { type JudgedWay, judgeWay } from './judgeWay.ts';
import { madeTogether } from './movementParts.ts';
import { compareOtherWay, learnRate, noteWay, takeUp } from './noteTravel.ts';
import {
  isBlocked,
  isLetGoAnywhere,
  isShortAgain,
  isShortAlone,
  LATEST_STROKES,
  lacksItsStop,
  leastShort,
  mayBeTheStay,
  SHORT_WITHOUT_STOP,
  stopsUsually,
} from './shortSigns.ts';
import { endsEarly, letGo, openFor, saidOfTheOther } from './shortTravelSaid.ts';
import { travelMade } from './travelMade.ts';

/** Once said it goes on while strokes are shorter by this part of what counts. */
const STILL_PART = 0.5;

/** A way back that is short by no more than this beyond the way out is explained by it. */
const EXPLAINED = 0.06;
/** So many of the latest strokes must be short to be said by that alone, and so many in a row must not to be over, or more where they come and go. Guesses. */
const LEAST_STROKES = 3;
const CLEAR_STROKES = 3;

/**
 * Strokes of one direction end before the room's usual travel: they take less time than supply and temperature
 * account for, though the motor ran as ever, and often without coming to the stop. The way back from a short stroke
 * is short too and says nothing; nor do the parts of a movement that was broken off and taken up again.
 */
export function shortTravel(context: FindingContext): FindingAnswer {
  const { state, analysis, direction } = context;
  const stopped = comesToStop(analysis);
  const made = travelMade(context);
  if (made === null) {
    learnRate(state.travel[direction], stopped);
    return NOTHING;
  }
  const way = judgeWay(context, made, stopped);
  const together = madeTogether(context, made.part);
  if (together === null) return judgeAlone(context, way);
  takeUp(context, together, stopped);
  return NOTHING;
}

/** Judges a stroke that goes on from none before it. */
function judgeAlone(context: FindingContext, way: JudgedWay): FindingAnswer {
  const { state, direction } = context;
  const { travel } = state;
  const own = travel[direction];
  const { made, shortBy, lacking, stopped } = way;
  if (isBack(context) && stopped && context.analysis.supplyVolts === null)
    compareOtherWay(travel, direction, context.event.atMs, made.part);
  const open = openFor(context);
  const explained = isExplained(context, way);
  own.latest.push({ short: explained ? 0 : shortBy, stopped, by: made.by, part: made.part });
  if (own.latest.length > LATEST_STROKES) own.latest.shift();
  const missesStop = lacksItsStop(own);
  travel.quickRun = shortBy > SHORT_WITHOUT_STOP ? travel.quickRun + 1 : 0;
  const alone = isShortAlone(made, shortBy);
  const again = shortBy > 0 && isShortAgain(own, made);
  const blocked = alone && isBlocked(context, made);
  // Each of these tells by itself; strokes that are merely short may be so for the supply of their stay.
  const surely = missesStop || blocked || lacking !== null;
  const seems = !explained && (surely || ((alone || again) && !mayBeTheStay(context, made)));
  noteFirstShort(context, made, shortBy);
  noteWay(context, way, { short: seems, explained });
  const short = seems && !isLetGoAnywhere(own);
  const goesOn = open !== undefined && !explained && shortBy > STILL_PART * leastShort(made);
  const flags = flag(state.recent, `short-travel ${direction}`, short || goesOn);
  if (open === undefined && !short) learnRate(own, stopped);
  // A room that stood still and goes its way again is no longer stuck.
  const comesAndGoes = open !== undefined && open.evidence.stoodStill !== true;
  keepHowOften(travel.said, direction, comesAndGoes, flags);
  const isGone = isOver(flags, CLEAR_STROKES) && isOverSince(travel.said[direction], CLEAR_STROKES);
  if (open !== undefined && isGone) return { present: [], gone: letGo(travel, direction, open) };
  const moves = short ? null : movesAgain(open, direction);
  if (moves !== null) return { present: [moves], gone: [] };
  const lasts = isLasting(flags, LEAST_STROKES, LATEST_STROKES);
  const opens = shortBy > SHORT_WITHOUT_STOP && (surely || again || lasts);
  if (!short || (open === undefined && !opens)) return NOTHING;
  const byItself = blocked && !lasts ? shortBy : null;
  return { present: [endsEarly(context, open, byItself, flags.filter(Boolean).length)], gone: [] };
}

/** Whether the stroke before it went the other way. */
function isBack({ state: { travel }, direction }: FindingContext): boolean {
  return travel.direction === otherWay(direction);
}

/** Whether it is short only because the way before it was, or what is said of the other direction has it so. */
function isExplained(context: FindingContext, { shortBy, stopped }: JudgedWay): boolean {
  const { travel } = context.state;
  const own = travel[context.direction];
  // What keeps up a warning of the other end is short for that end's sake, and explained by nothing before it.
  if (own.saidOf !== null && own.saidOf !== context.direction) return false;
  // The one of the two that lacks its usual stop is the one that ends early; that happens once to the other as well.
  const isOnce = travel.shortBy > 0 && own.latest.at(-1)?.stopped !== false;
  if (!stopped && !isOnce && stopsUsually(own)) return false;
  const byTheWayBefore = isBack(context) && travel.shortBy > 0 && shortBy <= travel.shortBy + EXPLAINED;
  return byTheWayBefore || shortBy <= saidOfTheOther(context) + EXPLAINED;
}
