import type { Direction, LiveSamples } from '../api/types.ts';

/** One line of a stroke that is still under way. */
export interface RunningLine {
  /** null: the supply. */
  readonly side: string | null;
  readonly seconds: readonly number[];
  readonly values: readonly (number | null)[];
}

export interface RunningStroke {
  readonly strokeId: string;
  readonly direction: Direction | null;
  readonly startedAt: string;
  readonly lines: readonly RunningLine[];
}

/** The strokes under way with a few samples more. Pieces of one side come in order; one that comes again adds nothing. */
export function takeSamples(strokes: readonly RunningStroke[], samples: LiveSamples): RunningStroke[] {
  const known = strokes.find(({ strokeId }) => strokeId === samples.strokeId);
  const { strokeId, direction, startedAt } = samples;
  const before = known ?? { strokeId, direction, startedAt, lines: [] };
  const grown = { ...before, lines: takeLine(before.lines, samples) };
  return known === undefined ? [...strokes, grown] : strokes.map((one) => (one === known ? grown : one));
}

export function withoutStroke(strokes: readonly RunningStroke[], id: string): readonly RunningStroke[] {
  return strokes.some(({ strokeId }) => strokeId === id)
    ? strokes.filter(({ strokeId }) => strokeId !== id)
    : strokes;
}

function takeLine(lines: readonly RunningLine[], samples: LiveSamples): RunningLine[] {
  const { side, rateHz, startsAtS } = samples;
  const values = samples.side === null ? samples.volts : samples.amps;
  const seconds = values.map((_, i) => startsAtS + i / rateHz);
  const known = lines.find((line) => line.side === side);
  if (known === undefined) return [...lines, { side, seconds, values }];
  if (startsAtS <= (known.seconds[known.seconds.length - 1] ?? Number.NEGATIVE_INFINITY)) return [...lines];
  const grown = { side, seconds: [...known.seconds, ...seconds], values: [...known.values, ...values] };
  return lines.map((line) => (line === known ? grown : line));
}

/** Up to when there are samples, seconds from the start. */
export function lastSecond({ lines }: RunningStroke): number {
  return Math.max(0, ...lines.map(({ seconds }) => seconds[seconds.length - 1] ?? 0));
}

/** The latest sample that was not missed. */
export function latestOf({ values }: RunningLine): number | null {
  return values.findLast((value) => value !== null) ?? null;
}

/** By its magnitude: a motor that turns the other way reads negative. */
export function highestOf({ values }: RunningLine): number | null {
  return values.reduce<number | null>((high, value) => {
    if (value === null) return high;
    return high === null || Math.abs(value) > Math.abs(high) ? value : high;
  }, null);
}
