import type { DoneAnalysis, SideMeasures } from '../api/types.ts';
import { quantity } from '../format.ts';
import { sideName } from '../sideName.ts';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';

interface PhaseRow {
  readonly name: string;
  readonly fromS: number;
  readonly toS: number;
}

function rowsOf({ phases }: SideMeasures): PhaseRow[] {
  const say = strokeWords.phases;
  const { startS, inrushEndS, endStopStartS, endS, pauses } = phases;
  const rows: PhaseRow[] = [
    { name: say.inrush, fromS: startS, toS: inrushEndS },
    { name: say.running, fromS: inrushEndS, toS: endStopStartS ?? endS },
    ...pauses.map((pause) => ({ ...pause, name: say.pause })),
  ];
  if (endStopStartS !== null) rows.push({ name: say.endStop, fromS: endStopStartS, toS: endS });
  return rows.sort((a, b) => a.fromS - b.fromS);
}

/** When each side's phases began and ended. */
export function PhasesTable({ analysis, sides }: { analysis: DoneAnalysis; sides: readonly string[] }) {
  const say = strokeWords;
  return (
    <table>
      <caption>{say.phaseTable}</caption>
      <thead>
        <tr>
          <th scope="col">{words.warnings.side}</th>
          <th scope="col">{say.phase}</th>
          <th scope="col" class="number">
            {say.from}
          </th>
          <th scope="col" class="number">
            {say.to}
          </th>
        </tr>
      </thead>
      <tbody>
        {sides
          .filter((side) => analysis.sides[side] !== undefined)
          .flatMap((side) =>
            rowsOf(analysis.sides[side]).map((row) => (
              <tr key={`${side}/${row.name}/${row.fromS}`}>
                <th scope="row" dir="auto">
                  {sideName(side)}
                </th>
                <td>{row.name}</td>
                <td class="number">{quantity(row.fromS, words.units.seconds)}</td>
                <td class="number">{quantity(row.toS, words.units.seconds)}</td>
              </tr>
            )),
          )}
      </tbody>
    </table>
  );
}
