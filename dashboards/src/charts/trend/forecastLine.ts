import type { Trend } from '../../api/types.ts';

/** A forecast in strokes, put on the axis of time by the pace of the latest strokes. Seconds since 1970. */
export interface ForecastLine {
  readonly fromS: number;
  readonly fromValue: number;
  readonly serviceLine: number;
  /** When the service line is reached, with the interval's ends; the later may never come. */
  readonly reachedS: number;
  readonly earliestS: number;
  readonly latestS: number | null;
}

/** Strokes whose pace is taken for the pace to come. */
const PACE_STROKES = 30;

/** Null where nothing is forecast, or no pace is known. */
export function forecastLine({ forecast, points }: Trend): ForecastLine | null {
  const times = points.slice(-PACE_STROKES).map(({ at }) => Date.parse(at) / 1000);
  if (forecast === null || times.length < 2) return null;
  const fromS = times[times.length - 1];
  const paceS = (fromS - times[0]) / (times.length - 1);
  const after = (strokes: number) => fromS + strokes * paceS;
  const grown = (1 + forecast.percentPerStroke / 100) ** forecast.strokes;
  return {
    fromS,
    fromValue: forecast.serviceLine / grown,
    serviceLine: forecast.serviceLine,
    reachedS: after(forecast.strokes),
    earliestS: after(forecast.lower),
    latestS: forecast.upper === null ? null : after(forecast.upper),
  };
}

/** The future may take so much of the picture, as a part of the past. */
const MOST_AHEAD = 0.6;

/** Until when a picture shows what is to come: all of it, unless that would press the past together. */
export function endOfForecast({ fromS, reachedS, latestS }: ForecastLine, firstS: number): number {
  return Math.min(Math.max(reachedS, latestS ?? 0), fromS + MOST_AHEAD * Math.max(1, fromS - firstS));
}
