import type { Trend, TrendPoint } from '../../api/types.ts';
import { quantity, whenText } from '../../format.ts';
import { words } from '../../words.ts';

/** A table of thousands helps nobody; older strokes are in the list of strokes. */
const ROWS = 200;

function againstNormal(point: TrendPoint, limits: Trend['limits']): string {
  const say = words.trend;
  if (point.expected === null) return say.notJudged;
  if (!point.beyond) return say.inside;
  const centre = limits?.centre ?? point.expected ?? point.value;
  return (point.adjusted ?? point.value) >= centre ? say.above : say.below;
}

/** One side's strokes, newest first, each with how it stands to the normal below its day: a phone has no width for one more column. */
export function TrendTable({ trend, unit }: { readonly trend: Trend; readonly unit: string }) {
  const say = words.trend;
  const rows = trend.points.slice(-ROWS).reverse();
  return (
    <table class="trend-table">
      <caption>{say.latestOnly(rows.length)}</caption>
      <thead>
        <tr>
          <th scope="col">{say.when}</th>
          <th scope="col">{say.value}</th>
          <th scope="col">{say.expectedColumn}</th>
          <th scope="col">{say.adjustedColumn}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((point) => (
          <tr key={point.strokeId}>
            <th scope="row">
              <a href={`/strokes/${point.strokeId}`}>{whenText(point.at)}</a>{' '}
              <span class="remarks">{againstNormal(point, trend.limits)}</span>
            </th>
            <td>{quantity(point.value, unit)}</td>
            <td>{quantity(point.expected, unit)}</td>
            <td>{quantity(point.adjusted, unit)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
