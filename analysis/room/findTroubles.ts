import { hasFormerProfile, isBorrowing, isReady } from '../baseline/channel.ts';
import { drawRebound } from '../findings/drawRebound/drawRebound.ts';
import { mayRebound } from '../findings/drawRebound/mayRebound.ts';
import { noteStroke } from '../findings/drawRebound/noteRebound.ts';
import type { Dropped } from '../findings/droppedLoad/dropped.ts';
import { droppedLoad } from '../findings/droppedLoad/droppedLoad.ts';
import { droppedOn } from '../findings/droppedLoad/droppedOn.ts';
import { type FindingAnswer, isOpen, openOf, openOn } from '../findings/finding.ts';
import { easedRoom, heavySides, lighterRoom, NOT_EASED } from '../findings/heavyRoom/easedRoom.ts';
import { standsAboveModel } from '../findings/heavyRoom/heavyForModel.ts';
import { heavyRoom } from '../findings/heavyRoom/heavyRoom.ts';
import { isPart } from '../findings/isPart.ts';
import { lateSide } from '../findings/lateSide/lateSide.ts';
import { lateSideExplains } from '../findings/load/explainedRise.ts';
import { restLoad } from '../findings/load/loadMemory.ts';
import { updateLoad } from '../findings/load/loadShift.ts';
import { risingDraw } from '../findings/load/risingDraw.ts';
import { unevenSides } from '../findings/load/unevenSides.ts';
import { isNotNormal } from '../findings/notNormal.ts';
import { sensorDoubt } from '../findings/sensorDoubt/sensorDoubt.ts';
import { shortTravel } from '../findings/shortTravel/shortTravel.ts';
import { stallSpike } from '../findings/stallSpike/stallSpike.ts';
import { isWeak, weakSupply } from '../findings/weakSupply.ts';
import type { StrokeEvent } from '../history.ts';
import { channelOf } from '../roomState.ts';
import type { Warning, WarningKind } from '../warning.ts';
import type { StrokeContext } from './context.ts';
import { keepWarnings } from './keepWarnings.ts';
import { learnEasedAnew } from './learnEasedAnew.ts';

/**
 * Asks the detectors in the order in which causes explain each other, so that one cause is one warning: a record that
 * is not to be trusted explains everything in it, a weak supply explains slow strokes, a side that dropped its load
 * explains the other's extra load, a draw that climbs back after a service explains its rise. `teaches`: whether the
 * baselines may learn from this stroke.
 */
export function findTroubles(context: StrokeContext): { warnings: Warning[]; teaches: boolean } {
  const { state, event } = context;
  // `shortTravel` says it of this stroke, where it is asked: what it said of an earlier one is over.
  state.travel.mayBeCut = false;
  const warnings: Warning[] = [];
  const keep = (answer: FindingAnswer) => warnings.push(...keepWarnings(state, event, answer));
  keep(sensorDoubt(state, event, context));
  keep({ present: [], gone: explainedByRecord(context) });
  const weak = isWeak(context);
  keep(weakSupply(context));
  const eased = weak ? NOT_EASED : easedRoom(context);
  const lighter = weak || eased.now ? NOT_EASED : lighterRoom(context);
  // A load that was made lighter is none that was lost.
  const dropped = weak || eased.now || lighter.now ? [] : droppedOn(context);
  if (!weak) {
    if (eased.lasts) {
      const heavy = openOf(state, 'heavy-room');
      keep({ present: [], gone: heavy });
      for (const warning of heavy) learnEasedAnew(state, heavySides(context, warning));
    }
    if (lighter.lasts) learnEasedAnew(state, state.room.sides);
    // What one side does not carry the other does.
    if (dropped.length === 0 && !eased.now) keep(heavyRoom(context));
    keep(droppedLoad(context, dropped));
    keep({ present: [], gone: explainedByLost(context, dropped) });
    const lost = dropped.length > 0 || isOpen(state, 'dropped-load');
    if (!lost) lookAtLoad(context, keep);
    // An overloaded drive trips or stalls on its way, one side before the other.
    const overloaded = isOpen(state, 'heavy-room');
    if (!lost && !overloaded) lookForLateSide(context, keep);
    // A motor that lost its load runs faster, and so does one that was relieved.
    if (!lost && !overloaded && !lighter.now) keep(shortTravel(context));
    keep(stallSpike(context, dropped));
  }
  const lostKnownLoad = dropped.some(({ side }) => knowsLoad(context, side));
  return {
    warnings: saidOf(warnings, event),
    teaches: !isNotNormal(state) && !weak && !lostKnownLoad && !state.travel.mayBeCut,
  };
}

/** Of the way a side must have lost its load on so much before the middle of what the other draws is raised by it. A guess. */
const RAISES_MIDDLE = 0.35;

/**
 * What was said of the load before a side was found to drive the room no longer: the other side bears what it lost, and what
 * it drew more itself, on the way there, is over. What is left once it drives again is said again.
 */
function explainedByLost({ state, residual }: StrokeContext, dropped: readonly Dropped[]): Warning[] {
  const lost = dropped.filter(({ side }) => openOn(state, 'dropped-load', side) !== undefined);
  const isExplained = ({ side, evidence }: Warning) =>
    // A motor that stands still is no load that is borne.
    evidence.stoodStill !== true &&
    lost.some((found) => {
      if (found.side === side) return (residual(side, 'runningAmps')?.rise ?? 0) <= 0;
      return evidence.from !== undefined || found.to - found.from >= RAISES_MIDDLE;
    });
  const gone = [...openOf(state, 'rising-draw'), ...openOf(state, 'uneven-sides')].filter(isExplained);
  // What its memory holds is of the load that was.
  if (gone.length > 0) restLoad(state.load);
  return gone;
}

/** Without what one detector opened and another explained by the same stroke: that was never said. */
function saidOf(warnings: readonly Warning[], { strokeId }: StrokeEvent): Warning[] {
  const explained = warnings.filter(
    ({ firstStrokeId, clearedAtMs }) => clearedAtMs !== null && firstStrokeId === strokeId,
  );
  const ids = new Set(explained.map(({ id }) => id));
  return warnings.filter(({ id }) => !ids.has(id));
}

/** Whether a side's usual course is more than what a first stroke or two said, which may have been odd ones. */
function knowsLoad({ state, direction }: StrokeContext, side: string): boolean {
  const channel = channelOf(state, side, direction);
  return channel !== undefined && (isReady(channel) || hasFormerProfile(channel));
}

/** What was said of a current or a travel before it was seen that the record lies: a zero that moved, a scale, a wrong rate. */
function explainedByRecord({ state, zeros, scales, rate }: StrokeContext): Warning[] {
  const isDoubted = (side: string | null) =>
    openOf(state, 'sensor-doubt').some((doubt) => doubt.side === side || state.room.sides.length === 1);
  const byZero = [...zeros.keys()].filter(isDoubted);
  const byRate =
    rate !== null && isDoubted(null) ? [...openOf(state, 'short-travel'), ...openOf(state, 'late-side')] : [];
  const loads = [...openOf(state, 'rising-draw'), ...openOf(state, 'uneven-sides')];
  const byScale = [...scales].flatMap(([side, change]) =>
    isDoubted(side) ? loads.filter((warning) => isOfScale(warning, side, change)) : [],
  );
  // What its memory holds is of another scale.
  if (byScale.length > 0) restLoad(state.load);
  return [...loads.filter(({ side }) => side !== null && byZero.includes(side)), ...byScale, ...byRate];
}

/** A rise that was said is a scale's where it was at least so large a part of what that adds. A guess, no source. */
const OF_SCALE = 0.6;

/** Whether what was said of a load is what another scale of one side's sensor, natural logarithm, makes of it. */
function isOfScale({ kind, side: taker, evidence }: Warning, side: string, change: number): boolean {
  if (kind === 'uneven-sides') return (taker === side) === change > 0;
  return taker === side && change > 0 && (evidence.risePercent ?? 0) / 100 > OF_SCALE * Math.expm1(change);
}

/**
 * A side that works harder than it did is slower for it, and so is one that bears what the other lost. One that is late while
 * the other works harder is not: the other drags it along, which its lateness explains.
 */
function lookForLateSide(context: StrokeContext, keep: (answer: FindingAnswer) => void): void {
  const { state } = context;
  const slowed = SLOWING.flatMap((kind) => openOf(state, kind)).map(({ side }) => side);
  if (slowed.includes(null)) return;
  const { present, gone } = lateSide(context);
  const late = present.filter(({ side }) => !slowed.includes(side));
  keep({ present: late, gone });
  if (late.length === 0) return;
  const dragging = openOf(state, 'rising-draw').filter(lateSideExplains);
  keep({ present: [], gone: [...dragging, ...openOf(state, 'uneven-sides')] });
}

/** A room that stands above what others lend it from the first strokes on, whether that is said or not, is no rise of its own. */
function isHeavyForOthers({ state, direction }: StrokeContext): boolean {
  const borrows = state.channels.some((channel) => channel.direction === direction && isBorrowing(channel));
  const stands = () => state.room.sides.some((side) => standsAboveModel(state, side));
  return borrows && (isOpen(state, 'heavy-room') || stands());
}

/** What is said of a side that is slower for what it bears. */
const SLOWING: readonly WarningKind[] = ['rising-draw', 'uneven-sides', 'draw-rebound'];

/** How the load stands, and what is said of it: a draw that climbs back explains a rise, which explains uneven sides. */
function lookAtLoad(context: StrokeContext, keep: (answer: FindingAnswer) => void): void {
  const { state } = context;
  if (context.doubtful.size === 0) noteStroke(context);
  if (isHeavyForOthers(context)) return;
  const load = updateLoad(context);
  if (load === null) return;
  keep(drawRebound(context));
  const rebound = isOpen(state, 'draw-rebound');
  if (rebound) {
    keep({ present: [], gone: openOf(state, 'rising-draw') });
    return;
  }
  if (isOpen(state, 'rising-draw') || !mayRebound(context, load.risen)) keep(risingDraw(context, load));
  if (!isPart(context)) keep(unevenSides(context, load));
}
