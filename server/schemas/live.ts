import { z } from 'zod';
import type { Direction } from '../../analysis/trace.ts';
import { Id } from './common.ts';
import type { ProblemMessage } from './problemMessage.ts';
import type { RoomStatus, Warning } from './results.ts';
import type { Stroke } from './stroke.ts';

/** What a person's program may say on the live feed. */
export const LiveRequest = z.discriminatedUnion(
  'type',
  [
    z.object({ type: z.enum(['hello', 'token']), token: z.string().max(200) }),
    z.object({ type: z.literal('watch'), roomId: Id }),
    z.object({ type: z.literal('unwatch'), roomId: Id }),
  ],
  { error: 'Must be one of: hello, watch, unwatch.' },
);
export type LiveRequest = z.infer<typeof LiveRequest>;

/**
 * Samples of a stroke that is still under way, once they are committed, each once. Whoever begins to watch is first
 * told of all there are; `strokeId` is the id that the finished stroke gets.
 */
export type LiveSamples = {
  readonly type: 'samples';
  readonly roomId: string;
  readonly strokeId: string;
  /** The logger's own name for the stroke: two loggers may use the same. */
  readonly key: string;
  readonly direction: Direction | null;
  readonly startedAt: string;
  /** Of the last piece in it: counts from 0 through all pieces of the stroke, whatever side they are of. */
  readonly seq: number;
  readonly rateHz: number;
  /** Of the first of the samples, seconds from `startedAt`. */
  readonly startsAtS: number;
} & (
  | {
      readonly side: string;
      /** null is a missed sample. */
      readonly amps: readonly (number | null)[];
    }
  | {
      /** The supply's. */
      readonly side: null;
      readonly volts: readonly number[];
    }
);

/** What the service says on it. A watch is answered with the room's status as it stands. */
export type LivePush =
  | LiveSamples
  | { readonly type: 'status'; readonly roomId: string; readonly status: RoomStatus }
  | { readonly type: 'stroke'; readonly roomId: string; readonly stroke: Stroke }
  | { readonly type: 'warning'; readonly roomId: string; readonly warning: Warning }
  | (ProblemMessage & { readonly roomId?: string });
