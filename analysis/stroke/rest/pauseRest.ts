import { median } from '../../statistics/median.ts';
import { HIGH_PART, isLong, type Rest, type RestSearch } from './rests.ts';

/** A motor that starts again after a pause draws at least so many times its running current, and falls back from it. */
const START_TIMES = 1.8;
const START_WITHIN_S = 0.4;
const FALLS_TO_PART = 0.75;
const SHORTEST_PAUSE_REST_S = 0.4;

/**
 * The readings of the longest pause within the stroke: a stretch below the threshold that ends in a start. A side that
 * lost its load for a while ends it without one, and a motor that runs lightly up to its stop stalls there for good.
 */
export function pauseRest(search: RestSearch): Rest | null {
  const { signal, smooth, threshold, rough } = search;
  let longest: Rest | null = null;
  for (let i = 0; i < smooth.length; i++) {
    if (smooth[i] >= threshold) continue;
    const from = i;
    while (i < smooth.length && smooth[i] < threshold) i++;
    const starts = startsAt(search, i);
    // What lies next to the motion may hold part of it.
    const pause = signal.amps.subarray(from + 1, i - 1);
    const plausible = pause.length > 0 && median(pause) < HIGH_PART * (rough - median(pause));
    const isLongest = pause.length > (longest?.rest.length ?? 0);
    if (starts && plausible && isLong(signal, pause, SHORTEST_PAUSE_REST_S) && isLongest)
      longest = { rest: pause, stood: { fromS: signal.timesS[from + 1], toS: signal.timesS[i - 1] } };
  }
  return longest;
}

/** Whether the motor starts at this sample, and runs after it. */
function startsAt({ signal, smooth, rough }: RestSearch, from: number): boolean {
  const to = from + Math.ceil(START_WITHIN_S / signal.stepS);
  let peak = 0;
  let peakAt = from;
  for (let i = from; i < Math.min(to, smooth.length); i++) {
    if (signal.peakAmps[i] <= peak) continue;
    peak = signal.peakAmps[i];
    peakAt = i;
  }
  const fallsBack = () => smooth.subarray(peakAt).some((amps) => amps < FALLS_TO_PART * peak);
  return peak > START_TIMES * rough && fallsBack();
}
