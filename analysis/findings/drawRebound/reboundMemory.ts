import type { Weather } from '../../baseline/conditions.ts';

/** How far one stroke's running current lay above what was normal before any service, by side; null: not measured. */
export type StrokeRise = readonly (number | null)[];

/** The running current around the latest service, natural logarithm over the reference of before it. */
export interface Origin {
  /** Intercept and slopes. */
  readonly coefficients: readonly number[];
  readonly weather: Weather;
}

/** What is remembered of the running current around the latest service. */
export interface ReboundMemory {
  /** What was normal before any service, by channel, `side|direction`. */
  origin: Record<string, Origin>;
  /** The latest strokes before the service. */
  before: StrokeRise[];
  /** The same since the service; null: there was none. */
  after: StrokeRise[] | null;
  /** The service that it may be laid to, and the one side that was worked on; null: all. */
  kind: string | null;
  side: string | null;
}

/** No stroke and no service yet. */
export function beginReboundMemory(): ReboundMemory {
  return { origin: {}, before: [], after: null, kind: null, side: null };
}
