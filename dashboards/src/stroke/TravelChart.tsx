import { useCallback, useMemo } from 'preact/hooks';
import type { DoneAnalysis } from '../api/types.ts';
import { Chart } from '../charts/Chart.tsx';
import { LineKey, MarkKey } from '../charts/keys.tsx';
import { Plot } from '../charts/Plot.tsx';
import type { ChartTheme } from '../charts/theme.ts';
import { type NumberedMark, travelSpec } from '../charts/travelSpec.ts';
import { percent, quantity } from '../format.ts';
import { sideName } from '../sideName.ts';
import { words } from '../words.ts';

const HEIGHT_PX = 280;

interface TravelProps {
  readonly analysis: DoneAnalysis;
  readonly sides: readonly string[];
  readonly marks: readonly NumberedMark[];
}

function sideSummary(side: string, profile: readonly (number | null)[]): string {
  const known = profile.flatMap((amps, bin) => (amps === null ? [] : [{ amps, bin }]));
  if (known.length === 0) return '';
  const inOrder = [...known].sort((a, b) => a.amps - b.amps);
  const peak = inOrder[inOrder.length - 1];
  const middle = inOrder[Math.floor(inOrder.length / 2)];
  const place = percent((peak.bin + 0.5) / profile.length);
  return words.stroke.travelSummary(
    sideName(side),
    quantity(middle.amps, 'A'),
    quantity(peak.amps, 'A'),
    place,
  );
}

function TravelTable({ analysis, sides }: Omit<TravelProps, 'marks'>) {
  const bins = Math.max(0, ...sides.map((side) => analysis.sides[side].profile.length));
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{words.stroke.place}</th>
          {sides.map((side) => (
            <th key={side} scope="col" class="number" dir="auto">
              {sideName(side)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {Array.from({ length: bins }, (_, bin) => (
          // A bin is its index.
          <tr key={bin}>
            <th scope="row">{percent((bin + 0.5) / bins)}</th>
            {sides.map((side) => (
              <td key={side} class="number">
                {quantity(analysis.sides[side].profile[bin], 'A')}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Both sides on one travel axis, with spikes and dips where they were. */
export function TravelChart({ analysis, sides, marks }: TravelProps) {
  const shown = useMemo(() => sides.filter((side) => analysis.sides[side] !== undefined), [analysis, sides]);
  const spec = useCallback(
    (theme: ChartTheme) => travelSpec(analysis, sides, marks, theme),
    // Sides and marks follow from the analysis.
    [analysis],
  );
  const readout = (bin: number | null) => {
    if (bin === null) return words.stroke.travelAxis;
    const bins = analysis.sides[shown[0]].profile.length;
    const values = shown.map(
      (side) => `${sideName(side)} ${quantity(analysis.sides[side].profile[bin], 'A')}`,
    );
    return `${percent((bin + 0.5) / bins)}: ${values.join(' · ')}`;
  };
  if (shown.length === 0) return null;
  const kinds = (['spike', 'dip'] as const).filter((kind) => marks.some((mark) => mark.kind === kind));
  return (
    <section>
      <Chart
        level={2}
        title={words.stroke.travel}
        summary={shown.map((side) => sideSummary(side, analysis.sides[side].profile)).join(' ')}
        keys={
          <>
            {shown.map((side) => (
              <LineKey key={side} text={sideName(side)} side={sides.indexOf(side)} />
            ))}
            {kinds.map((kind) => (
              <MarkKey
                key={kind}
                text={kind === 'spike' ? words.stroke.spike : words.stroke.dip}
                dip={kind === 'dip'}
              />
            ))}
          </>
        }
        picture={
          <>
            <Plot spec={spec} heightPx={HEIGHT_PX} readout={readout} />
            <p class="about">{words.stroke.travelLead}</p>
          </>
        }
        table={<TravelTable analysis={analysis} sides={shown} />}
      />
    </section>
  );
}
