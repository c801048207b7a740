import type { DoneAnalysis, Doubt, SideMeasures } from '../../measures.ts';
import { mostOffset, offsetDetail } from '../rest/offset.ts';
import type { RestLevel } from '../rest/restLevel.ts';
import { differenceNoise } from '../rest/rests.ts';
import type { SideSignal } from '../signal/sideSignal.ts';
import { highestReadings } from './highestReadings.ts';
import { mostNoise, noiseDetail } from './noise.ts';

/** What is hard to trust of one side, with a sentence for people. */
export type FoundDoubt = DoneAnalysis['doubts'][number];

/**
 * Above this part of the noise allowed while running, the noise at rest may show only its positive half.
 */
const HALF_SEEN = 0.08;
/** A careful logger misses no larger share of the samples, and has no longer gap: seconds, or a part of the stroke. */
const MISSED_SHARE = 0.15;
const GAP_S = 1;
const GAP_PART = 0.08;
/** This many samples at almost the same time are more than jitter. */
const CROWDED_SAMPLES = 8;
/** A record in which a motor starts but which never reads above this multiple of its running current was cut off. */
const CLIPPED_PART = 1.6;
/**
 * How many of the highest readings must be the same: where a record is cut below `CLIPPED_PART`, and where both start
 * and stall are cut off, in all and in each of the two.
 */
const FEWEST_SAME = 5;
const SAME_AT_BOTH = { all: 6, starting: 2, stopping: 3 };
/**
 * Readings count for the start from this long before the first current to this long after it, seconds, and for the
 * stall in the last ones.
 */
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
  // A logger that sends no negative numbers shows only a part of its noise at rest; all of it shows while the motor
  // runs.
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

/** A logger that sends nothing for a while marks no sample as missed: then only the times show the gap. */
function gapsDetail({ missedShare, longestGapS }: SideSignal): string {
  const percent = Math.round(100 * missedShare);
  const inARow = longestGapS.toFixed(1);
  if (percent === 0) return `For ${inARow} s there is no sample at all.`;
  return `${percent} % of the samples are missing, ${inARow} s of them in a row.`;
}

/**
 * Whether the record is cut off: its highest readings are the same value both at the start and at the stop, or so low
 * that no motor's start fits below them. A start draws the most of all: if it lies below the highest reading, it was
 * not cut off.
 */
function isClipped(signal: SideSignal, measured: SideMeasures, offsetAmps: number): boolean {
  const { startS, inrushEndS, endS } = measured.phases;
  const { timesS, peakAmps } = signal;
  // Without a held reading (`heldReading.ts`) nothing is cut off.
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
