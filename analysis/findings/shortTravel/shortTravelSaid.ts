import { wayOf } from '../../names.ts';
import { median } from '../../statistics/median.ts';
import { DIRECTIONS, type Direction, otherWay } from '../../trace.ts';
import type { Warning } from '../../warning.ts';
import { type Finding, type FindingContext, openOf } from '../finding.ts';
import { isWholeBeside } from './firstShort.ts';
import { lackedEnd } from './lackedEnd.ts';
import { stopsUsually } from './shortSigns.ts';
import type { DirectionTravel, TravelMemory } from './travelMemory.ts';

/** A travel that ends so much early is worth a visit by itself, per cent. */
const SERVICE_PERCENT = 15;

/** The warning that strokes of this direction keep up, if there is one. */
export function openFor({ state, direction }: FindingContext): Warning | undefined {
  const { travel } = state;
  const own = travel[direction];
  const open = (at: Direction) => openOf(state, 'short-travel').find((warning) => warning.direction === at);
  if (own.saidOf !== null && open(own.saidOf) === undefined) own.saidOf = null;
  const isOfOther = own.saidOf === null && travel[otherWay(direction)].saidOf === direction;
  return isOfOther ? undefined : open(own.saidOf ?? direction);
}

/** How short the other direction is said to be, natural logarithm; minus infinity: it is not. */
export function saidOfTheOther({ state, direction }: FindingContext): number {
  if (state.travel[direction].saidOf !== null) return Number.NEGATIVE_INFINITY;
  const open = openOf(state, 'short-travel').find((warning) => warning.direction !== direction);
  const isOwn = openOf(state, 'short-travel').some((warning) => warning.direction === direction);
  const { shortPercent, stoodStill = false } = open?.evidence ?? {};
  if (isOwn || stoodStill || shortPercent === undefined) return Number.NEGATIVE_INFINITY;
  return -Math.log1p(-shortPercent / 100);
}

/** Strokes of this direction are short no more: the warning is gone, unless those of the other keep it up. */
export function letGo(travel: TravelMemory, direction: Direction, open: Warning): Warning[] {
  travel[direction].saidOf = null;
  travel.missing = [];
  return travel[otherWay(direction)].saidOf === open.direction ? [] : [open];
}

/** A single stroke may be let go before its stop. */
const MISSING_STOPS = 2;

/** The one direction whose latest strokes came to no stop, as its strokes do as a rule; null: neither did, or both. */
function missesStop(travel: TravelMemory): Direction | null {
  const missing = DIRECTIONS.filter((way) => {
    const latest = travel[way].latest.slice(-MISSING_STOPS);
    return (
      latest.length === MISSING_STOPS && stopsUsually(travel[way]) && latest.every(({ stopped }) => !stopped)
    );
  });
  return missing.length === 1 ? missing[0] : null;
}

/** Whether the latest stroke of a direction took its whole time: then it did not stop where the short ones begin. */
function wasWhole({ latest }: DirectionTravel, usual: number): boolean {
  const part = latest.at(-1)?.part;
  return part !== undefined && isWholeBeside(part, usual);
}

/**
 * What is said of strokes of this direction that end early, and remembered of whose end. `shortBy`: of this one, where one is
 * enough; null: of the latest together, as one that was broken off besides says nothing of how early all of them end.
 * `shortStrokes`: how many of the latest were short.
 */
export function endsEarly(
  { state: { travel }, direction }: FindingContext,
  open: Warning | undefined,
  shortBy: number | null,
  shortStrokes: number,
): Finding {
  const own = travel[direction];
  const usual = shortBy ?? median(own.latest.flatMap(({ short }) => (short > 0 ? [short] : [])));
  const percent = Math.round(-100 * Math.expm1(-usual));
  const lacked = lackedEnd(travel);
  const told = lacked ?? travel.began?.direction ?? direction;
  const at = open?.direction ?? missesStop(travel) ?? (wasWhole(travel[told], usual) ? direction : told);
  own.saidOf = at;
  const stalls = travel[at].latest.at(-1)?.stopped === true;
  return {
    kind: 'short-travel',
    side: null,
    direction: at,
    severity: percent >= SERVICE_PERCENT || stalls ? 'service' : 'watch',
    headline: `Going ${wayOf(at)}, the room ends its travel about ${percent} % early${stalls ? ' and the motor stalls there' : ''}.`,
    evidence: { shortPercent: percent, stalled: stalls, shortStrokes },
  };
}
