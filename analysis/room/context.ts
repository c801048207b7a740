import type { FindingContext } from '../findings/finding.ts';
import { rateChange } from '../findings/sensorDoubt/clockRate.ts';
import { cutsPeaksAlone } from '../findings/sensorDoubt/cutsPeaksAlone.ts';
import { stopFell } from '../findings/sensorDoubt/fallenStop.ts';
import { restChange } from '../findings/sensorDoubt/restChange.ts';
import { isWorse } from '../findings/sensorDoubt/sensorDoubt.ts';
import { scaleChange } from '../findings/sensorDoubt/sensorScale.ts';
import type { SensorChanges } from '../findings/sensorDoubt/speaksAgainst.ts';
import { isTurned } from '../findings/sensorDoubt/turnedSensor.ts';
import { zeroChange } from '../findings/sensorDoubt/zeroChange.ts';
import { conditionsOf, sideConditions } from '../findings/strokeConditions.ts';
import type { StrokeEvent } from '../history.ts';
import { type DoneAnalysis, type Doubt, isBetweenSides } from '../measures.ts';
import type { RoomState } from '../roomState.ts';
import type { JudgedStroke } from './judgeStroke.ts';

/** Doubts that leave the current usable: a steady offset is measured at rest and taken off. */
const HARMLESS: ReadonlySet<Doubt> = new Set(['offset']);

/**
 * Sides whose record is not to be trusted by what measuring it left in doubt, whatever the baseline says. One whose peaks
 * alone are cut off is: what is read off those is left out (`isComparable.ts`).
 */
export function doubtfulSides(analysis: DoneAnalysis, sides: readonly string[]): Set<string> {
  const doubtful = new Set<string>();
  for (const { side, doubt } of analysis.doubts) {
    if (doubt === 'clock') for (const name of sides) doubtful.add(name);
    else if (!HARMLESS.has(doubt) && !isOfPeaks(analysis, side, doubt)) doubtful.add(side);
  }
  return doubtful;
}

function isOfPeaks(analysis: DoneAnalysis, side: string, doubt: Doubt): boolean {
  return doubt === 'clipped' && cutsPeaksAlone(analysis, side);
}

/**
 * Sides that are said to read something else than what flows. A doubted scale counts until the doubt is over, since a stroke that
 * does not show it is not sound for that; a zero only where this record holds no rest by which it could be taken off.
 */
function saidToReadWrong({ open, room }: RoomState, { sides }: DoneAnalysis): string[] {
  return open.flatMap(({ side, evidence: { doubt } }) => {
    const whose = side === null ? room.sides : [side];
    if (doubt === 'scale') return whose;
    return doubt === 'offset' ? whose.filter((name) => sides[name]?.offsetAmps === null) : [];
  });
}

/** Sides whose record was found wanting before, and this stroke leaves a doubt as well: its zero is no better than the rest. */
function stillInDoubt({ open }: RoomState, analysis: DoneAnalysis): string[] {
  return open.flatMap((warning) => {
    const { kind, side, evidence } = warning;
    const isWanting = kind === 'sensor-doubt' && isWorse(warning);
    const isCut = evidence.doubt === 'clipped';
    const leavesOne = analysis.doubts.some(
      ({ side: whose, doubt }) => whose === side && !(isCut && isOfPeaks(analysis, whose, doubt)),
    );
    return isWanting && side !== null && leavesOne ? [side] : [];
  });
}

/** What the detectors look at, and what seems to have changed about the record itself. */
export interface StrokeContext extends FindingContext, SensorChanges {}

/**
 * Everything the detectors look at, with the sides that are not to be trusted on this stroke hidden from them. Takes the
 * stroke into the memories of what tells a changed sensor or clock (scale, zero, sign, rate): once for each stroke.
 *
 * What changed is read off the residuals before they are hidden: `residual` asks `doubtful`, which grows meanwhile.
 */
export function contextOf(
  state: RoomState,
  event: StrokeEvent,
  analysis: DoneAnalysis,
  judged: JudgedStroke,
): StrokeContext {
  const { sides } = state.room;
  const doubtful = doubtfulSides(analysis, sides);
  for (const side of stillInDoubt(state, analysis)) doubtful.add(side);
  const residual: FindingContext['residual'] = (side, measure) => {
    if (doubtful.has(side)) return null;
    if (isBetweenSides(measure) && doubtful.size > 0) return null;
    return judged.residual(side, measure);
  };
  const context = {
    state,
    event,
    analysis,
    direction: analysis.direction,
    conditions: conditionsOf(state, event, analysis),
    sideConditions: (side: string) => sideConditions(state, event, analysis, side),
    doubtful,
    residual,
  };
  const scales = new Map<string, number>();
  const zeros = new Map<string, number>();
  for (const side of sides) {
    const change = scaleChange(context, side);
    if (change !== null) scales.set(side, change);
    const moved = zeroChange(context, side);
    if (moved !== null) zeros.set(side, moved);
  }
  for (const side of saidToReadWrong(state, analysis)) doubtful.add(side);
  const turned = turnedSides(state, analysis);
  const fallen = new Set(sides.filter((side) => stopFell(context, side)));
  const rests = new Map(
    sides.flatMap((side) => {
      const change = restChange(context, side);
      return change === null ? [] : [[side, change] as const];
    }),
  );
  const rate = rateChange(context);
  const changed = rate === null ? [...scales.keys(), ...zeros.keys()] : sides;
  for (const side of changed) doubtful.add(side);
  return { ...context, scales, zeros, turned, fallen, rests, rate };
}

/** Sides whose sensor reads the other way round than it did; a side of an older analysis has no sign to tell it by. */
function turnedSides({ signs }: RoomState, { direction, sides }: DoneAnalysis): Set<string> {
  const turned = Object.entries(sides).filter(([side, { sign }]) => {
    const memory = signs[side];
    return sign !== undefined && memory !== undefined && isTurned(memory, direction, sign);
  });
  return new Set(turned.map(([side]) => side));
}
