import type { SideMeasures } from '../../measures.ts';
import { isStandstillRead, standstillAmps } from '../../motor/turns.ts';

/** Where its standstill is not read, a motor is held to draw so many times its running current there at the least. A guess, no source. */
const LEAST_STANDSTILL = 2;
/** Peaks are read from means over a moment, which leave some of them out: so many times what is read. A guess, no source. */
const READ_PART = 1.3;

/**
 * By how many seconds its peaks kept a side back at the most: while a motor draws more it turns slower by what part that is of
 * all that it could draw more, up to where it stands still (V = I R + Ke ω).
 */
export function slowedByPeaks(measured: SideMeasures): number {
  const { spikes, runningAmps } = measured;
  const standstill = isStandstillRead(measured) ? standstillAmps(measured) : LEAST_STANDSTILL * runningAmps;
  const left = standstill - runningAmps;
  const slowedS = ({ amps, widthS }: SideMeasures['spikes'][number]) =>
    widthS * Math.min(1, (amps - runningAmps) / left);
  return READ_PART * spikes.reduce((sum, spike) => sum + slowedS(spike), 0);
}
