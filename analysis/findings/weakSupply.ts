import { DIRECTIONS } from '../trace.ts';
import { type FindingAnswer, type FindingContext, NOTHING, openOf } from './finding.ts';
import { flag, flagsOf, isLasting, isOver } from './recent.ts';

/** The part of nominal below which the mean supply while running is weak (contract, section 6). */
const WEAK_PART = 7 / 8;
const STOP_PART = 0.75;
/** It holds again where it stays above that by this much, part of nominal: a supply at the line swings about it. A guess, no source. */
const CLEAR_PART = 0.02;
/** Strokes of each direction: the way that draws more is the one that pulls it down. */
const CLEAR_STROKES = 3;

/** Whether this stroke ran on a weak supply; false where the supply was not recorded. */
export function isWeak({ state, analysis }: Pick<FindingContext, 'state' | 'analysis'>): boolean {
  return analysis.supplyVolts !== null && analysis.supplyVolts < WEAK_PART * state.room.nominalVolts;
}

/** The mean supply while running was too low in two strokes or more; other findings are held back meanwhile. */
export function weakSupply(context: FindingContext): FindingAnswer {
  const { state, analysis } = context;
  const { supplyVolts } = analysis;
  if (supplyVolts === null) return NOTHING;
  const weak = isWeak(context);
  const flags = flag(state.recent, 'weak-supply', weak);
  const low = supplyVolts < (WEAK_PART + CLEAR_PART) * state.room.nominalVolts;
  flag(state.recent, `low-supply ${context.direction}`, low);
  const [open] = openOf(state, 'weak-supply');
  const isLow = DIRECTIONS.some((way) =>
    isLasting(flagsOf(state.recent, `low-supply ${way}`), 1, CLEAR_STROKES),
  );
  if (open !== undefined && !isLow && isOver(flags, CLEAR_STROKES)) return { present: [], gone: [open] };
  if (!weak || (open === undefined && !isLasting(flags, 2, 6))) return NOTHING;
  const { nominalVolts } = state.room;
  const volts = Math.round(10 * supplyVolts) / 10;
  return {
    present: [
      {
        kind: 'weak-supply',
        side: null,
        severity: supplyVolts < STOP_PART * nominalVolts ? 'service' : 'watch',
        headline: `The supply held only ${volts} V while the room moved; a ${nominalVolts} V system should hold ${WEAK_PART * nominalVolts} V or more.`,
        evidence: { meanVolts: Math.round(100 * supplyVolts) / 100, leastVolts: WEAK_PART * nominalVolts },
      },
    ],
    gone: [],
  };
}
