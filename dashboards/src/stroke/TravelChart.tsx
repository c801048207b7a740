import { useCallback, useMemo } from 'preact/hooks';
import type { DoneAnalysis, Normal, NormalSide, Room, Stroke, TravelTrace } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import type { NumberedMark } from '../charts/drawn/marks.ts';
import { Chart } from '../charts/plot/Chart.tsx';
import type { PlotLibrary } from '../charts/plot/drawPlot.ts';
import { Plot } from '../charts/plot/Plot.tsx';
import type { ChartTheme } from '../charts/plot/theme.ts';
import type { View } from '../charts/plot/view.ts';
import type { Overlay, ProfileLine } from '../charts/travel/profileLine.ts';
import { travelSpec } from '../charts/travel/travelSpec.ts';
import { Waiting } from '../components/coming/states.tsx';
import { lengthText, percent } from '../format.ts';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';
import { gearTurns, metresPerTurn } from './gearTurns.ts';
import { LETTERS } from './overlayChoice.ts';
import { TravelKeys } from './TravelKeys.tsx';
import { TravelTable } from './TravelTable.tsx';
import { readoutAt, sideSummary } from './travelWords.ts';

const HEIGHT_PX = 340;

interface TravelProps {
  readonly level?: 2 | 3;
  readonly stroke: Stroke;
  readonly room: Room;
  readonly analysis: DoneAnalysis;
  readonly sides: readonly string[];
  readonly marks: readonly NumberedMark[];
  /** Other strokes to lay over this one, in order. */
  readonly others: readonly Stroke[];
}

function profilesOf(stroke: Stroke, sides: readonly string[]): ProfileLine[] {
  const { analysis } = stroke;
  if (analysis?.status !== 'done') return [];
  return sides.flatMap((side) => {
    const measures = analysis.sides[side];
    return measures === undefined ? [] : [{ side, profile: measures.profile }];
  });
}

/** Only sides whose normal is known. */
function knownNormal(normal: Normal | null): ReadonlyMap<string, NormalSide> {
  return new Map(
    Object.entries(normal?.sides ?? {}).flatMap(([side, of]) => (of === null ? [] : [[side, of]])),
  );
}

const viewText = ({ min, max }: View) =>
  words.zoom.span(percent(Math.max(0, min)), percent(Math.min(1, max)));

/** Both sides on one travel axis, over their normal, with all that is known of the way. */
export function TravelChart({ level = 2, stroke, room, analysis, sides, marks, others }: TravelProps) {
  const say = strokeWords;
  const { travelMetres } = room;
  const travel = useLoad<TravelTrace>(`/strokes/${stroke.id}/travel`);
  const asked = new URLSearchParams({ direction: analysis.direction, stroke: stroke.id });
  const normalLoad = useLoad<Normal>(`/rooms/${room.id}/normal?${asked}`);
  const lines = useMemo(() => profilesOf(stroke, sides), [stroke, sides]);
  const normal = useMemo(() => knownNormal(normalLoad.value), [normalLoad.value]);
  const overlays = useMemo(
    (): Overlay[] => others.map((other, i) => ({ letter: LETTERS[i], lines: profilesOf(other, sides) })),
    [others, sides],
  );
  const turns = useMemo(() => gearTurns(room), [room]);
  const spec = useCallback(
    (theme: ChartTheme, library: PlotLibrary) =>
      travelSpec({ sides, lines, travel: travel.value, normal, overlays, marks, turns }, theme, library),
    [sides, lines, travel.value, normal, overlays, marks, turns],
  );
  if (lines.length === 0) return null;
  // Normal and samples bring words and keys of their own: what came piece by piece would move under the reader.
  if ([travel, normalLoad].some(({ value, problem }) => value === null && problem === null))
    return (
      <section class="picture-place">
        <Waiting />
      </section>
    );
  const turnMetres = metresPerTurn(room);
  return (
    <section>
      <Chart
        level={level}
        title={say.travel}
        summary={[
          ...lines.map((line) =>
            sideSummary(line, normal.get(line.side), analysis.sides[line.side]?.spikes ?? []),
          ),
          normal.size === 0 && normalLoad.value !== null ? say.noNormal : '',
        ].join('\n')}
        keys={
          <TravelKeys
            stroke={stroke}
            sides={sides}
            shown={lines.map(({ side }) => side)}
            others={others}
            marks={marks}
            travel={travel.value}
            hasNormal={normal.size > 0}
            hasTurns={turns.length > 0}
          />
        }
        picture={
          <>
            <Plot
              spec={spec}
              heightPx={HEIGHT_PX}
              viewText={viewText}
              readout={(index, at) =>
                index === null ? say.travelAxis : readoutAt(at, lines, normal, overlays, travelMetres)
              }
            />
            <p class="about">
              {say.travelLead}
              {turns.length > 0 && turnMetres !== null && ` ${say.turnLead(lengthText(turnMetres))}`}
            </p>
          </>
        }
        table={<TravelTable lines={lines} normal={normal} overlays={overlays} travelMetres={travelMetres} />}
      />
    </section>
  );
}
