import { type FindingAnswer, type FindingContext, NOTHING, openOf } from './finding.ts';
import { flag, isLasting, isOver } from './recent.ts';

/** Strokes this much shorter than expected count as short, with the supply recorded and without. */
const SHORT = 0.06;
const SHORT_UNRECORDED = 0.13;
const SIGMAS = 3;
/** A way back that is short by no more than this beyond the way out is explained by it. */
const EXPLAINED = 0.06;
const LEAST_STROKES = 3;
const CLEAR_STROKES = 3;

export interface TravelMemory {
  /** How much shorter than expected the latest stroke was, natural logarithm; 0: it was not. */
  shortBy: number;
  direction: string | null;
}

/**
 * Strokes of one direction end before the room's usual travel: they take less time than supply and temperature
 * account for, though the motor ran as ever. The way back from a short stroke is short too and says nothing.
 */
export function shortTravel(context: FindingContext): FindingAnswer {
  const { state, analysis, direction } = context;
  const judged = state.room.sides
    .map((side) => context.residual(side, 'durationS'))
    .filter((residual) => residual !== null);
  if (judged.length === 0) return NOTHING;
  const least = analysis.supplyVolts === null ? SHORT_UNRECORDED : SHORT;
  // The side that was driven longest tells how far the room went.
  const longest = judged.reduce((a, b) => (b.rise > a.rise ? b : a));
  const shortBy = Math.max(0, -longest.rise);
  const isShort = shortBy > Math.max(least, SIGMAS * longest.deviation);
  const before = state.travel;
  const explained =
    before.direction !== null && before.direction !== direction && shortBy <= before.shortBy + EXPLAINED;
  const short = isShort && !explained;
  state.travel = { shortBy: short ? shortBy : 0, direction };
  const flags = flag(state.recent, `short-travel ${direction}`, short);
  const open = openOf(state, 'short-travel').find((warning) => warning.direction === direction);
  if (open !== undefined && isOver(flags, CLEAR_STROKES)) return { present: [], gone: [open] };
  if (!short || (open === undefined && !isLasting(flags, LEAST_STROKES, 4))) return NOTHING;
  const percent = Math.round(-100 * Math.expm1(-shortBy));
  const doing = direction === 'extend' ? 'out' : 'in';
  const stalled = Object.values(analysis.sides).some((side) => side.endStopAmps !== null);
  return {
    present: [
      {
        kind: 'short-travel',
        side: null,
        direction,
        position: null,
        pattern: null,
        severity: percent >= 15 || stalled ? 'service' : 'watch',
        headline: `Going ${doing}, the room ends its travel about ${percent} % early${stalled ? ' and the motor stalls there' : ''}.`,
        evidence: { shortPercent: percent, stalled },
      },
    ],
    gone: [],
  };
}
