import type { SmallLine } from './smallLine.ts';
import type { SmallScale } from './smallScale.ts';

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
  /** Of all that is drawn: its lines, its band and its limit. */
  readonly scale: SmallScale;
  /** What stands below its left and its right end. */
  readonly ends: readonly [string, string];
  /** What the picture shows, in a sentence. */
  readonly label: string;
}

const WIDTH = 320;
const HEIGHT = 88;
const EDGE = 8;

/** A small picture with three values at its side and its two ends below. Drawn as it is, no library needed. */
export function SmallChart(props: SmallChartProps) {
  const { lines, band, limit = null, uprights = [], place = null, scale, ends, label } = props;
  const { bottom, top } = scale;
  const x = (along: number) => Math.round(10 * (EDGE + along * (WIDTH - 2 * EDGE))) / 10;
  const y = (value: number) => Math.round(10 * (HEIGHT - (HEIGHT * (value - bottom)) / (top - bottom))) / 10;
  return (
    <div class="small-picture">
      <div class="small-values" aria-hidden="true">
        {[top, (top + bottom) / 2, bottom].map((value) => (
          <span key={value}>{scale.tell(value)}</span>
        ))}
      </div>
      <svg class="small-chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
        <path class="small-grid" d={`M0 0H${WIDTH}M0 ${HEIGHT / 2}H${WIDTH}M0 ${HEIGHT}H${WIDTH}`} />
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
      <div class="small-ends" aria-hidden="true">
        <span>{ends[0]}</span>
        <span>{ends[1]}</span>
      </div>
    </div>
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
