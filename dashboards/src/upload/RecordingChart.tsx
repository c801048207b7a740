import { useCallback } from 'preact/hooks';
import type { Room, StrokesPreview } from '../api/types.ts';
import { BandKey, LineKey, SupplyKey } from '../charts/drawn/keys.tsx';
import { Chart } from '../charts/plot/Chart.tsx';
import type { PlotLibrary } from '../charts/plot/drawPlot.ts';
import { Plot } from '../charts/plot/Plot.tsx';
import type { ChartTheme } from '../charts/plot/theme.ts';
import type { View } from '../charts/plot/view.ts';
import { recordingSpec } from '../charts/time/recordingSpec.ts';
import { plainCount, quantity } from '../format.ts';
import { sideName } from '../sideName.ts';
import { strokeWords } from '../words/stroke.ts';
import { uploadWords } from '../words/upload.ts';
import { words } from '../words.ts';

const HEIGHT_PX = 260;
const seconds = (value: number) => quantity(value, words.units.seconds);
const viewText = ({ min, max }: View) => words.zoom.span(seconds(min), seconds(max));

/** The recording as a picture, and how it is cut in words and as a table. */
export function RecordingChart({ preview, room }: { readonly preview: StrokesPreview; readonly room: Room }) {
  const say = uploadWords;
  const { sides, supply, strokes, rows, delimiter } = preview;
  const spec = useCallback(
    (theme: ChartTheme, library: PlotLibrary) => recordingSpec(preview, room.sides, theme, library),
    [preview, room],
  );
  const lastS = Math.max(0, ...sides.map((line) => line.seconds[line.seconds.length - 1] ?? 0));
  const columns = delimiter === null ? say.oneColumn : say.partedBy(say.delimiters[delimiter] ?? delimiter);
  return (
    <Chart
      level={2}
      title={say.picture}
      summary={say.summary(strokes.length, seconds(lastS), plainCount(rows), columns)}
      keys={
        <>
          {sides.map(({ name }, i) => (
            <LineKey
              key={name}
              text={sideName(name)}
              side={room.sides.includes(name) ? room.sides.indexOf(name) : i}
            />
          ))}
          {supply !== null && <SupplyKey text={strokeWords.volts} />}
          <BandKey text={say.strokeKey} />
        </>
      }
      picture={
        <Plot
          spec={spec}
          heightPx={HEIGHT_PX}
          viewText={viewText}
          readout={(index, at) => (index === null ? say.pictureAxis : seconds(at))}
        />
      }
      table={
        <table>
          <thead>
            <tr>
              <th scope="col">{say.number}</th>
              <th scope="col" class="number">
                {strokeWords.from}
              </th>
              <th scope="col" class="number">
                {strokeWords.to}
              </th>
            </tr>
          </thead>
          <tbody>
            {strokes.map(({ fromS, toS }, i) => (
              <tr key={fromS}>
                <th scope="row">{i + 1}</th>
                <td class="number">{seconds(fromS)}</td>
                <td class="number">{seconds(toS)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      }
    />
  );
}
