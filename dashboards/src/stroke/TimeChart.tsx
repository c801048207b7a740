import { useCallback, useMemo, useState } from 'preact/hooks';
import type { DoneAnalysis, Stroke, Trace } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { LineKey, PhaseKey, SupplyKey } from '../charts/drawn/keys.tsx';
import type { NumberedMark } from '../charts/drawn/marks.ts';
import { Chart } from '../charts/plot/Chart.tsx';
import type { PlotLibrary } from '../charts/plot/drawPlot.ts';
import { Plot } from '../charts/plot/Plot.tsx';
import type { ChartTheme } from '../charts/plot/theme.ts';
import type { View } from '../charts/plot/view.ts';
import { timeSpec } from '../charts/time/timeSpec.ts';
import { Loaded } from '../components/coming/states.tsx';
import { quantity } from '../format.ts';
import { sideInSentence, sideName } from '../sideName.ts';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';
import { PhasesTable } from './PhasesTable.tsx';
import { sideLines, supplyLine, type TraceLine } from './traceLines.ts';

const HEIGHT_PX = 300;

interface TimeProps {
  readonly stroke: Stroke;
  readonly sides: readonly string[];
  readonly analysis: DoneAnalysis | null;
  readonly marks: readonly NumberedMark[];
}

function lineSummary(line: TraceLine): string {
  const peak = line.values.reduce<number>((high, amps) => Math.max(high, amps ?? high), 0);
  const runS = line.seconds[line.seconds.length - 1] - line.seconds[0];
  return strokeWords.timeSummary(
    sideInSentence(line.name),
    quantity(runS, words.units.seconds),
    quantity(peak, 'A'),
  );
}

function PhaseKeys({ analysis }: { readonly analysis: DoneAnalysis }) {
  const say = strokeWords.phases;
  const phases = Object.values(analysis.sides).map((side) => side.phases);
  return (
    <>
      <PhaseKey text={say.inrush} phase="inrush" />
      <PhaseKey text={say.running} phase="running" />
      {phases.some((p) => p.endStopStartS !== null) && <PhaseKey text={say.endStop} phase="end-stop" />}
      {phases.some((p) => p.pauses.length > 0) && <PhaseKey text={say.pause} phase="pause" />}
    </>
  );
}

interface PictureProps extends TimeProps {
  readonly trace: Trace;
  readonly onView: (view: View | null) => void;
}

const viewText = ({ min, max }: View) => {
  const at = (seconds: number) => quantity(seconds, words.units.seconds);
  return words.zoom.span(at(min), at(max));
};

function TracePicture({ stroke, trace, sides, analysis, marks, onView }: PictureProps) {
  const lines = useMemo(() => sideLines(trace), [trace]);
  const supply = useMemo(() => supplyLine(trace), [trace]);
  const spec = useCallback(
    (theme: ChartTheme, library: PlotLibrary) =>
      timeSpec({ sides, lines, supply, analysis, marks }, theme, library),
    // Sides and marks follow from these.
    [lines, supply, analysis],
  );
  return (
    <Chart
      level={2}
      title={strokeWords.time}
      summary={lines.map(lineSummary).join('\n')}
      keys={
        <>
          {lines.map((line) => (
            <LineKey
              key={line.name}
              text={sideName(line.name)}
              side={Math.max(0, sides.indexOf(line.name))}
            />
          ))}
          {supply !== null && <SupplyKey text={strokeWords.volts} />}
          {stroke.ambientC !== null && (
            <li>
              {strokeWords.ambient}: {quantity(stroke.ambientC, '°C')}
            </li>
          )}
          {analysis !== null && <PhaseKeys analysis={analysis} />}
        </>
      }
      picture={
        <>
          <Plot
            spec={spec}
            heightPx={HEIGHT_PX}
            viewText={viewText}
            onView={onView}
            readout={(index, at) =>
              index === null ? strokeWords.timeAxis : quantity(at, words.units.seconds)
            }
          />
          {lines.some((line) => line.flipped) && <p class="about">{strokeWords.flipped}</p>}
        </>
      }
      table={
        analysis === null ? <p>{strokeWords.noPhases}</p> : <PhasesTable analysis={analysis} sides={sides} />
      }
    />
  );
}

/** So many points fill any screen; the smallest and the largest of each stretch are among them. */
const POINTS = 4000;

/**
 * What was recorded, second by second. Fetched after the rest: it is by far the largest answer, so a long record comes
 * thinned first, and as it is once somebody looks closer.
 */
export function TimeChart(props: TimeProps) {
  const [closer, setCloser] = useState(false);
  const path = `/strokes/${props.stroke.id}/trace`;
  const thin = useLoad<Trace>(`${path}?points=${POINTS}`);
  const whole = useLoad<Trace>(closer && thin.value?.thinned === true ? path : null);
  const onView = useCallback((view: View | null) => view !== null && setCloser(true), []);
  return (
    <section class="picture-place">
      <Loaded load={thin}>
        {(value) => <TracePicture {...props} trace={whole.value ?? value} onView={onView} />}
      </Loaded>
    </section>
  );
}
