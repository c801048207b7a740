import { z } from 'zod';
import { Id, type Problem } from './common.ts';
import type { RoomStatus, Warning } from './results.ts';
import type { Stroke } from './stroke.ts';

/** What a person's program may say on the live feed. */
export const LiveRequest = z.discriminatedUnion(
  'type',
  [
    z.object({ type: z.literal('token'), token: z.string().max(200) }),
    z.object({ type: z.literal('watch'), roomId: Id }),
    z.object({ type: z.literal('unwatch'), roomId: Id }),
  ],
  { error: 'Must be one of: token, watch, unwatch.' },
);
export type LiveRequest = z.infer<typeof LiveRequest>;

/** What the service says on it. A watch is answered with the room's status as it stands. */
export type LivePush =
  | { readonly type: 'status'; readonly roomId: string; readonly status: RoomStatus }
  | { readonly type: 'stroke'; readonly roomId: string; readonly stroke: Stroke }
  | { readonly type: 'warning'; readonly roomId: string; readonly warning: Warning }
  | { readonly type: 'problem'; readonly roomId?: string; readonly problem: Problem };
