import { MEASURES } from '../api/questions.ts';
import type { DoneAnalysis, MeasureTitle, SideMeasures, Stroke } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { Loaded } from '../components/coming/states.tsx';
import { Scroll } from '../components/told/Scroll.tsx';
import { quantity } from '../format.ts';
import { sideName } from '../sideName.ts';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';

interface MeasuresProps {
  readonly stroke: Stroke;
  readonly analysis: DoneAnalysis;
  readonly sides: readonly string[];
}

/** The value of a measure as the service names it; null where this side has none, or not as a number. */
function numberOf(measures: SideMeasures | undefined, name: string): number | null {
  const value = Object.entries(measures ?? {}).find(([key]) => key === name)?.[1];
  return typeof value === 'number' ? value : null;
}

/** Less is written as 0. */
const LEAST_LAG_S = 0.005;

function Remarks({ stroke, analysis, sides }: MeasuresProps) {
  const say = strokeWords;
  const ends = [sides[0], sides[sides.length - 1]];
  const [early, late] = (analysis.lagS ?? 0) < 0 ? [ends[1], ends[0]] : ends;
  return (
    <ul class="remarks">
      {analysis.lagS !== null && sides.length > 1 && (
        <li>
          {Math.abs(analysis.lagS) < LEAST_LAG_S
            ? say.together
            : say.lag(quantity(Math.abs(analysis.lagS), words.units.seconds), late, early)}
        </li>
      )}
      {analysis.supplyVolts !== null && (
        <li>
          {say.supply}: {quantity(analysis.supplyVolts, 'V')}
        </li>
      )}
      {stroke.ambientC !== null && (
        <li>
          {say.ambient}: {quantity(stroke.ambientC, '°C')}
        </li>
      )}
      <li>{analysis.positionBy === 'speed' ? say.bySpeed : say.byTime}</li>
    </ul>
  );
}

export function MeasuresTable(props: MeasuresProps) {
  const { analysis, sides } = props;
  const titles = useLoad<readonly MeasureTitle[]>(MEASURES);
  // With one side there is nothing to share.
  const shareOf = (side: string) => (sides.length > 1 ? (analysis.share?.[side] ?? null) : null);
  const cell = (name: string, side: string) =>
    name === 'share' ? shareOf(side) : numberOf(analysis.sides[side], name);
  return (
    <section aria-labelledby="measures">
      <h2 id="measures">{strokeWords.measures}</h2>
      <Loaded load={titles}>
        {(measures) => (
          <Scroll of={strokeWords.measures}>
            <table>
              <thead>
                <tr>
                  <th scope="col">{strokeWords.measure}</th>
                  {sides.map((side) => (
                    <th key={side} scope="col" class="number" dir="auto">
                      {sideName(side)}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {measures
                  .filter((measure) => sides.some((side) => cell(measure.name, side) !== null))
                  .map((measure) => (
                    <tr key={measure.name}>
                      <th scope="row">{measure.title}</th>
                      {sides.map((side) => (
                        <td key={side} class="number">
                          {quantity(cell(measure.name, side), measure.unit)}
                        </td>
                      ))}
                    </tr>
                  ))}
              </tbody>
            </table>
          </Scroll>
        )}
      </Loaded>
      <Remarks {...props} />
    </section>
  );
}
