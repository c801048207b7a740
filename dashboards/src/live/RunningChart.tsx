import { useCallback, useMemo } from 'preact/hooks';
import type { Room } from '../api/types.ts';
import { LineKey, SupplyKey } from '../charts/drawn/keys.tsx';
import { Chart } from '../charts/plot/Chart.tsx';
import type { PlotLibrary } from '../charts/plot/drawPlot.ts';
import { Plot } from '../charts/plot/Plot.tsx';
import type { ChartTheme } from '../charts/plot/theme.ts';
import { liveData, liveSpec } from '../charts/time/liveSpec.ts';
import { plainCount, quantity } from '../format.ts';
import { sideInSentence, sideName } from '../sideName.ts';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';
import { highestOf, lastSecond, latestOf, type RunningLine, type RunningStroke } from './runningStroke.ts';

const HEIGHT_PX = 240;
const seconds = (value: number) => quantity(value, words.units.seconds);
const nameOf = ({ side }: RunningLine) => (side === null ? strokeWords.volts : sideName(side));
const unitOf = ({ side }: RunningLine) => (side === null ? 'V' : 'A');

function RunningTable({ lines }: { readonly lines: readonly RunningLine[] }) {
  const say = words.live;
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{words.warnings.side}</th>
          <th scope="col" class="number">
            {say.latest}
          </th>
          <th scope="col" class="number">
            {say.highest}
          </th>
          <th scope="col" class="number">
            {say.samples}
          </th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.side}>
            <th scope="row" dir="auto">
              {nameOf(line)}
            </th>
            <td class="number">{quantity(latestOf(line), unitOf(line))}</td>
            <td class="number">{quantity(highestOf(line), unitOf(line))}</td>
            <td class="number">{plainCount(line.values.length)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A stroke's lines as they grow. */
export function RunningChart({ stroke, room }: { readonly stroke: RunningStroke; readonly room: Room }) {
  const say = words.live;
  const { lines } = stroke;
  const kinds = lines.map(({ side }) => side ?? '').join('\n');
  // A new line is a new picture; more of a line is only more of its data.
  const spec = useCallback(
    (theme: ChartTheme, library: PlotLibrary) => liveSpec(lines, room.sides, theme, library),
    [kinds, room],
  );
  const grown = useMemo(() => (library: PlotLibrary) => liveData(lines, library), [lines]);
  const currents = lines.filter(({ side }) => side !== null);
  return (
    <Chart
      level={3}
      pictureFirst
      title={words.directions[stroke.direction ?? 'unknown']}
      summary={[
        say.until(seconds(lastSecond(stroke))),
        ...currents.map((line) =>
          say.summary(
            line.side === null ? strokeWords.volts : sideInSentence(line.side),
            quantity(latestOf(line), 'A'),
            quantity(highestOf(line), 'A'),
          ),
        ),
      ].join(' ')}
      keys={lines.map((line) =>
        line.side === null ? (
          <SupplyKey key="supply" text={strokeWords.volts} />
        ) : (
          <LineKey
            key={line.side}
            text={sideName(line.side)}
            side={Math.max(0, room.sides.indexOf(line.side))}
          />
        ),
      )}
      picture={
        <Plot
          spec={spec}
          grown={grown}
          heightPx={HEIGHT_PX}
          readout={(index, at) => (index === null ? say.axis : seconds(at))}
        />
      }
      table={<RunningTable lines={lines} />}
    />
  );
}
