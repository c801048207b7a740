import type { Trend } from '../../api/types.ts';
import { shownValue, type TrendScale } from '../../charts/trend/trendValues.ts';
import { dayText, percent, plainCount, quantity } from '../../format.ts';
import { words } from '../../words.ts';

/** What the picture of a trend shows, in sentences. */
export function trendSummary(trend: Trend, unit: string, scale: TrendScale): string {
  const { points, limits } = trend;
  const first = points[0];
  const last = points[points.length - 1];
  const say = words.trend.summary;
  const sentences = [
    say.span(trend.thinned?.points ?? points.length, dayText(first.at), dayText(last.at)),
    say.latest(quantity(shownValue(last, scale), unit)),
  ];
  if (limits === null) return [...sentences, say.noBand].join(' ');
  if (scale === 'adjusted') {
    sentences.push(say.band(quantity(limits.lower, unit), quantity(limits.upper, unit)));
  }
  sentences.push(say.beyond(trend.thinned?.beyond ?? points.filter((p) => p.beyond === true).length));
  return [...sentences, ...forecastSentence(trend, unit)].join(' ');
}

function forecastSentence({ forecast }: Trend, unit: string): string[] {
  if (forecast === null) return [];
  const say = words.trend.summary;
  const { strokes, lower, upper, coverage, serviceLine } = forecast;
  const whole = (count: number) => plainCount(count);
  const span = upper === null ? say.atLeast(whole(lower)) : words.zoom.span(whole(lower), whole(upper));
  return [say.forecast(quantity(serviceLine, unit), whole(strokes), span, percent(coverage))];
}
