import type { DoneAnalysis, Doubt, SideMeasures } from '../../measures.ts';
import { mostOffset, offsetDetail } from '../rest/offset.ts';
import type { RestLevel } from '../rest/restLevel.ts';
import { differenceNoise } from '../rest/rests.ts';
import type { SideSignal } from '../signal/sideSignal.ts';
import { highestReadings } from './highestReadings.ts';
import { mostNoise, noiseDetail } from './noise.ts';

/** What is hard to trust of one side, with a sentence for people. */
export type FoundDoubt = DoneAnalysis['doubts'][number];

const HALF_SEEN = 0.08;
/** More missed samples, or a longer stretch without any, than a careful logger loses. */
const MISSED_SHARE = 0.15;
const GAP_S = 1;
const GAP_PART = 0.08;
/** So many samples at almost one time are no jitter. */
const CROWDED_SAMPLES = 8;
/** A record that never reads above this multiple of its running current though a motor started was cut off. */
const CLIPPED_PART = 1.6;
/** So many of the highest readings are the same where it is cut so low; of a start and a stall, so many altogether and of either. */
const FEWEST_SAME = 5;
const SAME_AT_BOTH = { all: 6, starting: 2, stopping: 3 };
/** A start is looked for from so long before the first current to so long after it, seconds, and a stall at the last so long. */
const START_S = { before: 0.3, after: 0.6 };
const STOP_S = 1.5;
/** What is said of a record that is cut off. */
export const CUT_OFF = 'Its highest readings are all the same: they are cut off.';

/** What makes one side's record hard to trust, though it could be measured. */
export function doubtsOf(signal: SideSignal, rest: RestLevel, measured: SideMeasures): FoundDoubt[] {
  const found: FoundDoubt[] = [];
  const say = (doubt: Doubt, detail: string) => found.push({ side: signal.side, doubt, detail });
  const { runningAmps } = measured;
  const offset = rest.offsetAmps ?? 0;
  if (Math.abs(offset) > mostOffset(runningAmps)) say('offset', offsetDetail(offset));
  const mostAtRest = mostNoise({ runningAmps, offsetAmps: offset });
  const mostRunning = mostNoise({ runningAmps, offsetAmps: null });
  // A logger that sends no negative numbers shows a part of its noise at rest: what it is shows while the motor runs.
  const isHalfSeen = rest.noiseAmps > HALF_SEEN * mostRunning;
  const noiseRunning = isHalfSeen ? Math.max(rest.noiseAmps, differenceNoise(signal.amps)) : rest.noiseAmps;
  const isSeenAtRest = rest.offsetAmps !== null && rest.noiseAmps > mostAtRest;
  if (isSeenAtRest || noiseRunning > mostRunning)
    say('noise', noiseDetail(isSeenAtRest ? rest.noiseAmps : noiseRunning));
  const spanS = measured.phases.endS - measured.phases.startS;
  if (signal.crowded >= CROWDED_SAMPLES) say('clock', 'The clock stood still during the stroke.');
  if (signal.missedShare > MISSED_SHARE || signal.longestGapS > Math.max(GAP_S, GAP_PART * spanS)) {
    say('gaps', gapsDetail(signal));
  }
  if (isClipped(signal, measured, offset)) say('clipped', CUT_OFF);
  return found;
}

/** Where the clock went on without any sample, none that was to come is missing: only the time tells. */
function gapsDetail({ missedShare, longestGapS }: SideSignal): string {
  const percent = Math.round(100 * missedShare);
  const inARow = longestGapS.toFixed(1);
  if (percent === 0) return `For ${inARow} s there is no sample at all.`;
  return `${percent} % of the samples are missing, ${inARow} s of them in a row.`;
}

/**
 * Whether the highest readings are one and the same value: while starting and at the stop alike, or so low that no
 * motor's start fits below it. A start draws the most of all: where it stands below the highest, nothing was cut off it.
 */
function isClipped(signal: SideSignal, measured: SideMeasures, offsetAmps: number): boolean {
  const { startS, inrushEndS, endS } = measured.phases;
  const { timesS, peakAmps } = signal;
  // Fewer than held readings, or what still follows the current, is cut off nowhere.
  if (measured.held === undefined) return false;
  const { amps, same, count: all } = highestReadings(peakAmps);
  if (all < FEWEST_SAME) return false;
  let starting = 0;
  let stopping = 0;
  for (let i = 0; i < peakAmps.length; i++) {
    if (peakAmps[i] < same) continue;
    if (timesS[i] >= startS - START_S.before && timesS[i] <= Math.max(inrushEndS, startS + START_S.after))
      starting++;
    if (timesS[i] >= endS - STOP_S) stopping++;
  }
  const times = (amps - offsetAmps) / measured.runningAmps;
  const low = times < CLIPPED_PART && starting >= 1;
  const atStopToo =
    all >= SAME_AT_BOTH.all && starting >= SAME_AT_BOTH.starting && stopping >= SAME_AT_BOTH.stopping;
  return low || atStopToo;
}
