import type { Weather } from '../baseline/conditions.ts';

/** The running current around the latest service, natural logarithm over the reference of before it. */
export interface Origin {
  /** Intercept and slopes. */
  readonly coefficients: readonly number[];
  readonly weather: Weather;
}

export interface ReboundMemory {
  /** What was normal before any service, by channel, `side|direction`. */
  origin: Record<string, Origin>;
  /** Mean rise of the sides on the latest strokes before the service. */
  before: number[];
  /** The same since the service; null: there was none. */
  after: number[] | null;
  /** The service that it may be laid to. */
  kind: string | null;
}

export function beginReboundMemory(): ReboundMemory {
  return { origin: {}, before: [], after: null, kind: null };
}
