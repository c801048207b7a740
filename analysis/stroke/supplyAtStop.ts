import type { SidePhases } from '../measures.ts';
import { median } from '../statistics/median.ts';
import type { SupplyTrace } from '../trace.ts';
import { firstAtOrAfter } from './signal/interval.ts';

/** The current still rises, and falls again, within these parts of the stall. Guesses, no source. */
const SETTLED_PART = 0.2;
const LET_GO_PART = 0.1;
/** One reading may have been taken a moment before or after. */
const FEWEST_READINGS = 2;

/**
 * The supply while a side stood at its end stop, volts, median: a battery gives less there than while the room ran, by what its
 * own resistance takes of the stall's current. Null where the side came to no stop, and where fewer than two readings fell
 * into it.
 */
export function supplyAtStop(
  supply: SupplyTrace | null,
  { endStopStartS, endS }: Pick<SidePhases, 'endStopStartS' | 'endS'>,
): number | null {
  if (supply === null || endStopStartS === null) return null;
  const lastsS = endS - endStopStartS;
  const [fromS, toS] = [endStopStartS + SETTLED_PART * lastsS, endS - LET_GO_PART * lastsS];
  const [from, to] = [fromS, toS].map((timeS) => firstAtOrAfter(supply.timesS, timeS));
  const volts = supply.volts.subarray(from, to);
  return volts.length < FEWEST_READINGS ? null : median(volts);
}
