import type { FindingContext } from '../finding.ts';
import type { Dropped } from './dropped.ts';

/**
 * A side that ends this much sooner than usual, natural logarithm of the time, has left the other alone, if that takes
 * its usual time to within the second.
 */
const SOONER = 0.2;
const AS_EVER = 0.1;

/**
 * The rest of the travel that a side did not drive because it stopped drawing current on its way, without a stall,
 * while another went on to its usual end: a motor that was switched off or lost its wire. Null where that is not so.
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
