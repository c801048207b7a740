import type { FindingContext } from '../finding.ts';
import type { Dropped } from './dropped.ts';

/** A side that ended so much of its time sooner, natural logarithm, while another went on as ever, left it alone. */
const SOONER = 0.2;
const AS_EVER = 0.1;

/**
 * Where a side stopped drawing current on its way, without any stall, and another one went on to its usual end: a motor that
 * was switched off or lost its wire. What is left of the travel it did not drive.
 */
export function endedAlone(context: FindingContext, side: string): Dropped | null {
  const { analysis, direction, residual } = context;
  const own = residual(side, 'durationS');
  const measured = analysis.sides[side];
  if (own === null || measured === undefined || own.residual > -SOONER || measured.endStopAmps !== null)
    return null;
  const wentOn = Object.keys(analysis.sides).some((other) => {
    const judged = other === side ? null : residual(other, 'durationS');
    return (
      judged !== null &&
      judged.residual > -AS_EVER &&
      analysis.sides[other].phases.endS > measured.phases.endS
    );
  });
  if (!wentOn) return null;
  const part = Math.exp(own.residual);
  return direction === 'extend' ? { side, from: part, to: 1 } : { side, from: 0, to: 1 - part };
}
