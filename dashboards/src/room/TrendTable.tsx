import type { Trend, TrendPoint } from '../api/types.ts';
import { quantity, whenText } from '../format.ts';
import { words } from '../words.ts';

/** A table of thousands helps nobody; older strokes are in the list of strokes. */
const ROWS = 200;

function againstNormal(point: TrendPoint, limits: Trend['limits']): string {
  const say = words.trend;
  if (point.expected === null) return say.notJudged;
  if (!point.beyond) return say.inside;
  const centre = limits?.centre ?? point.expected ?? point.value;
  return (point.adjusted ?? point.value) >= centre ? say.above : say.below;
}

export function TrendTable({ trend, unit }: { readonly trend: Trend; readonly unit: string }) {
  const say = words.trend;
  const rows = trend.points.slice(-ROWS).reverse();
  return (
    <table>
      <caption>{say.latestOnly(rows.length)}</caption>
      <thead>
        <tr>
          <th scope="col">{say.when}</th>
          <th scope="col">{say.value}</th>
          <th scope="col">{say.expectedColumn}</th>
          <th scope="col">{say.adjustedColumn}</th>
          <th scope="col">{say.verdictColumn}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((point) => (
          <tr key={point.strokeId}>
            <th scope="row">
              <a href={`/strokes/${point.strokeId}`}>{whenText(point.at)}</a>
            </th>
            <td>{quantity(point.value, unit)}</td>
            <td>{quantity(point.expected, unit)}</td>
            <td>{quantity(point.adjusted, unit)}</td>
            <td>{againstNormal(point, trend.limits)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
