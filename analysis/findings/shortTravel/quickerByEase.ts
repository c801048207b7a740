import { mean } from 'simple-statistics';
import { isStandstillRead, standstillAmps } from '../../motor/turns.ts';
import type { FindingContext } from '../finding.ts';
import { UNREAD_OF_STANDSTILL } from './quickerBySupply.ts';

/** A stroke that ends early misses its seal, and draws so much less for that, natural logarithm: a guess, no source. */
const BY_MISSED_SEAL = 0.1;

/**
 * By how much quicker a room is because it runs easier than it did, as after lubricating, natural logarithm: speed is
 * (V - I R) / Ke, and what it draws at standstill is V / R. The sides move one room, so that their mean tells: one that lost a
 * steep piece of its course draws less by itself. 0 where they draw hardly less.
 */
export function quickerByEase(context: FindingContext): number {
  const eased = context.state.room.sides.map((side) => easeOf(context, side)).filter((side) => side !== null);
  if (eased.length === 0 || mean(eased.map(({ fell }) => fell)) < BY_MISSED_SEAL) return 0;
  return mean(eased.map(({ quicker }) => quicker));
}

/** By how much less a side draws than it did, and by how much quicker it would be for that by itself, natural logarithms. */
function easeOf(
  { analysis, residual }: FindingContext,
  side: string,
): { fell: number; quicker: number } | null {
  const running = residual(side, 'runningAmps');
  if (running === null) return null;
  const measured = analysis.sides[side];
  const { runningAmps } = measured;
  const usual = runningAmps * Math.exp(-running.rise);
  const standstill = isStandstillRead(measured) ? standstillAmps(measured) : usual / UNREAD_OF_STANDSTILL;
  const toSpare = standstill - usual;
  // No motor runs at more than half of what it draws at standstill.
  return {
    fell: -running.rise,
    quicker: Math.log1p(Math.max(0, usual - runningAmps) / Math.max(toSpare, usual)),
  };
}
