import { downsample } from '../../../analysis/statistics/downsample.ts';
import { type Clock, type RecordedTrace, sampleTimes } from '../../../ingest/stroke.ts';

/** The trace with at most so many points a side: the smallest and the largest of each stretch, with their times. */
export function thinTrace(trace: RecordedTrace, points: number): RecordedTrace {
  return {
    sides: trace.sides.map(({ side, clock, amps }) => {
      const thin = thinned(clock, amps, points);
      return { side, clock: thin.clock, amps: thin.values };
    }),
    supply: trace.supply && suppliedBy(thinned(trace.supply.clock, trace.supply.volts, points)),
    ambientC: trace.ambientC,
  };
}

interface Thinned {
  readonly clock: Clock;
  readonly values: Float64Array;
}

function suppliedBy({ clock, values }: Thinned) {
  return { clock, volts: values };
}

function thinned(clock: Clock, values: Float64Array, points: number): Thinned {
  if (values.length <= points) return { clock, values };
  const times = sampleTimes(clock, values.length);
  const kept = downsample(values, Math.floor(points / 2));
  return {
    clock: { t: Float64Array.from(kept, (i) => times[i]) },
    values: Float64Array.from(kept, (i) => values[i]),
  };
}

/** Whether the one has fewer samples than the other. */
export function isThinner(trace: RecordedTrace, sent: RecordedTrace): boolean {
  const samples = ({ sides, supply }: RecordedTrace) =>
    sides.reduce((sum, { amps }) => sum + amps.length, supply?.volts.length ?? 0);
  return samples(trace) < samples(sent);
}
