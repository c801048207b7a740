import type { SmallLine } from './smallLine.ts';

interface SmallChartProps {
  readonly lines: readonly SmallLine[];
  /** The normal band; null while there is none. */
  readonly band: readonly [number, number] | null;
  /** A value that a dashed line marks. */
  readonly limit?: number | null;
  /** Places of upright lines, 0 to 1: work done. */
  readonly uprights?: readonly number[];
  /** A place to point at, 0 to 1. */
  readonly place?: number | null;
  /** What the picture shows, in a sentence. */
  readonly label: string;
}

const WIDTH = 320;
const HEIGHT = 88;
const EDGE = 8;

/** Of all that is drawn, with some room around. */
function extentOf({ lines, band, limit }: SmallChartProps): readonly [number, number] {
  const values = lines.flatMap((line) => line.points.flatMap(([, value]) => value ?? []));
  const all = [...values, ...(band ?? []), ...(limit === null || limit === undefined ? [] : [limit])];
  if (all.length === 0) return [0, 1];
  const low = Math.min(...all);
  const high = Math.max(...all);
  const room = (high - low || Math.abs(high) || 1) * 0.08;
  return [low - room, high + room];
}

/** A small picture without axes: its numbers stand in the words beside it. Drawn as it is, no library needed. */
export function SmallChart(props: SmallChartProps) {
  const { lines, band, limit = null, uprights = [], place = null, label } = props;
  const [low, high] = extentOf(props);
  const x = (along: number) => Math.round(10 * (EDGE + along * (WIDTH - 2 * EDGE))) / 10;
  const y = (value: number) => Math.round(10 * (HEIGHT - (HEIGHT * (value - low)) / (high - low))) / 10;
  return (
    <svg class="small-chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
      {band !== null && (
        <rect class="key-band" x="0" width={WIDTH} y={y(band[1])} height={y(band[0]) - y(band[1])} />
      )}
      {limit !== null && <path class="small-limit" d={`M0 ${y(limit)}H${WIDTH}`} />}
      {uprights.map((along) => (
        <path key={along} class="key-work" d={`M${x(along)} 0V${HEIGHT}`} />
      ))}
      {place !== null && <path class="small-place" d={`M${x(place)} 0v12m-6 -12l6 9l6 -9z`} />}
      {lines.map((line) => (
        <g key={line.side} class={`small-side small-side-${line.side + 1}`}>
          <path d={pathOf(line, x, y)} />
          {line.dotted === true &&
            line.points.map(([along, value], i) =>
              value === null ? null : line.beyond?.includes(i) === true ? (
                // A mark by its shape as well as by its colour.
                <path key={along} class="small-beyond" d={`M${x(along)} ${y(value) - 5}l5 5l-5 5l-5 -5z`} />
              ) : (
                <circle key={along} cx={x(along)} cy={y(value)} r="2" />
              ),
            )}
        </g>
      ))}
    </svg>
  );
}

/** A gap lifts the pen. */
function pathOf({ points }: SmallLine, x: (along: number) => number, y: (value: number) => number): string {
  let down = false;
  let path = '';
  for (const [along, value] of points) {
    if (value !== null) path += `${down ? 'L' : 'M'}${x(along)} ${y(value)}`;
    down = value !== null;
  }
  return path;
}
