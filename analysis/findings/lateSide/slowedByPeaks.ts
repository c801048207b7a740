import type { SideMeasures } from '../../measures.ts';
import { isStandstillRead, standstillAmps } from '../../motor/turns.ts';

/**
 * Where the current at standstill was not read, it is taken to be this many times the running current: a low guess, no
 * source.
 */
const LEAST_STANDSTILL = 2;
/**
 * Peaks are read from means over a moment, which lose a part of them: they are this many times as large as read. A
 * guess, no source.
 */
const READ_PART = 1.3;

/**
 * By how many seconds its peaks held a side up, at most. While a motor draws more it turns slower, in proportion: at
 * the running current it has its usual speed, at the current of a standstill none (V = I R + Ke ω).
 */
export function slowedByPeaks(measured: SideMeasures): number {
  const { spikes, runningAmps } = measured;
  const standstill = isStandstillRead(measured) ? standstillAmps(measured) : LEAST_STANDSTILL * runningAmps;
  const left = standstill - runningAmps;
  const slowedS = ({ amps, widthS }: SideMeasures['spikes'][number]) =>
    widthS * Math.min(1, (amps - runningAmps) / left);
  return READ_PART * spikes.reduce((sum, spike) => sum + slowedS(spike), 0);
}
