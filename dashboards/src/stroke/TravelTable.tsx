import type { NormalSide } from '../api/types.ts';
import type { Overlay, ProfileLine } from '../charts/travel/profileLine.ts';
import { placeText, quantity } from '../format.ts';
import { sideName } from '../sideName.ts';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';

interface TravelTableProps {
  readonly lines: readonly ProfileLine[];
  readonly normal: ReadonlyMap<string, NormalSide>;
  readonly overlays: readonly Overlay[];
  readonly travelMetres: number | null;
}

interface ColumnOfPlaces {
  readonly title: string;
  readonly cell: (bin: number) => string;
}

function columnsOf({ lines, normal, overlays }: TravelTableProps): ColumnOfPlaces[] {
  const say = strokeWords;
  const amps = (value: number | null | undefined) => quantity(value, 'A');
  const own = lines.flatMap(({ side, profile }): ColumnOfPlaces[] => {
    const band = normal.get(side);
    const column = { title: sideName(side), cell: (bin: number) => amps(profile[bin]) };
    if (band === undefined) return [column];
    const span = (bin: number) =>
      band.lower[bin] === null ? words.none : words.zoom.span(amps(band.lower[bin]), amps(band.upper[bin]));
    return [column, { title: say.normalOf(sideName(side)), cell: span }];
  });
  const laid = overlays.flatMap(({ letter, lines: theirs }) =>
    theirs.map(({ side, profile }) => ({
      title: `${letter}: ${sideName(side)}`,
      cell: (bin: number) => amps(profile[bin]),
    })),
  );
  return [...own, ...laid];
}

/** The travel picture as a table, place by place from fully in. */
export function TravelTable(props: TravelTableProps) {
  const bins = Math.max(0, ...props.lines.map(({ profile }) => profile.length));
  const columns = columnsOf(props);
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{strokeWords.place}</th>
          {columns.map(({ title }) => (
            <th key={title} scope="col" class="number" dir="auto">
              {title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {Array.from({ length: bins }, (_, bin) => (
          // A bin is its index.
          <tr key={bin}>
            <th scope="row">{placeText((bin + 0.5) / bins, props.travelMetres)}</th>
            {columns.map(({ title, cell }) => (
              <td key={title} class="number">
                {cell(bin)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
