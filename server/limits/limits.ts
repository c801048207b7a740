import { z } from 'zod';

/**
 * What one sender, a logger or a person, may ask of one process, and what the process takes on at once. The defaults
 * are far above what a coach sends in a year: a logger that was a month offline brings all of it as fast as it can.
 */
export interface Limits {
  readonly requestsPerMinute: number;
  /** So often may one address be wrong at signing in, whomever it tries. */
  readonly wrongSignInsPerMinute: number;
  /** Requests of one sender that are not answered yet. */
  readonly requestsAtOnce: number;
  /** Open connections of everybody. */
  readonly connections: number;
  /** Bodies that are being received or worked on, all together; one sender has at most half of it. */
  readonly bodyBytes: number;
  /** Large answers that are on their way out, all together; one sender has at most half of it. */
  readonly answerBytes: number;
  /** A large answer of which nothing was taken for so long is given up. */
  readonly answerStallMs: number;
  /** How long a request waits for others' bodies to go before it is sent away. */
  readonly waitMs: number;
  readonly headersWithinMs: number;
  /** Time that a body has whatever its size; each byte buys as much more as `bodyBytesPerS` says. */
  readonly bodyWithinMs: number;
  readonly bodyBytesPerS: number;
  /** A body of which nothing came for so long is given up, whatever was there before. */
  readonly bodyStallMs: number;
  /** However fast it comes: so long may a body take and no longer. */
  readonly bodyAtMostMs: number;
}

export const DEFAULT_LIMITS: Limits = {
  requestsPerMinute: 120_000,
  wrongSignInsPerMinute: 300,
  requestsAtOnce: 4096,
  connections: 8192,
  bodyBytes: 48 * 1024 * 1024,
  answerBytes: 32 * 1024 * 1024,
  answerStallMs: 30_000,
  waitMs: 30_000,
  headersWithinMs: 20_000,
  bodyWithinMs: 20_000,
  bodyBytesPerS: 1024,
  bodyStallMs: 30_000,
  bodyAtMostMs: 600_000,
};

const count = (least: number, most: number) =>
  z
    .string()
    .regex(/^\d{1,9}$/, { error: 'must be a whole number' })
    .transform(Number)
    .refine((number) => number >= least && number <= most, { error: `must be from ${least} to ${most}` })
    .optional();

/** The variables that set them. */
export const LimitsEnvironment = {
  LIMIT_REQUESTS_PER_MINUTE: count(60, 100_000_000),
  LIMIT_REQUESTS_AT_ONCE: count(1, 100_000),
  LIMIT_CONNECTIONS: count(10, 100_000),
  LIMIT_BODY_MEMORY_MIB: count(1, 100_000),
  LIMIT_HEADERS_SECONDS: count(1, 600),
  LIMIT_BODY_SECONDS: count(1, 600),
  LIMIT_BODY_BYTES_PER_SECOND: count(1, 1_000_000),
};

export function limitsFrom(set: z.infer<z.ZodObject<typeof LimitsEnvironment>>): Limits {
  const {
    LIMIT_BODY_MEMORY_MIB: mebibytes,
    LIMIT_HEADERS_SECONDS: headersS,
    LIMIT_BODY_SECONDS: bodyS,
  } = set;
  return {
    ...DEFAULT_LIMITS,
    requestsPerMinute: set.LIMIT_REQUESTS_PER_MINUTE ?? DEFAULT_LIMITS.requestsPerMinute,
    requestsAtOnce: set.LIMIT_REQUESTS_AT_ONCE ?? DEFAULT_LIMITS.requestsAtOnce,
    connections: set.LIMIT_CONNECTIONS ?? DEFAULT_LIMITS.connections,
    bodyBytes: mebibytes === undefined ? DEFAULT_LIMITS.bodyBytes : mebibytes * 1024 * 1024,
    headersWithinMs: headersS === undefined ? DEFAULT_LIMITS.headersWithinMs : headersS * 1000,
    bodyWithinMs: bodyS === undefined ? DEFAULT_LIMITS.bodyWithinMs : bodyS * 1000,
    bodyBytesPerS: set.LIMIT_BODY_BYTES_PER_SECOND ?? DEFAULT_LIMITS.bodyBytesPerS,
  };
}
