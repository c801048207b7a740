import type { LivePush } from '../../server/schemas/live.ts';
import { type Hearing, hear } from './hear.ts';

/** One person's live feed, over a real socket. */
export interface LiveFeed extends Hearing<LivePush> {
  close(): void;
}

/** Opens a feed; rejects with the status where the upgrade is refused. */
export async function openFeed(url: string, headers: Record<string, string> = {}): Promise<LiveFeed> {
  // What the service says has the shape that a test then looks at.
  const read = (bytes: Buffer) => JSON.parse(bytes.toString()) as LivePush;
  const hearing = await hear(`${url}/api/v1/live`, headers, read);
  return { ...hearing, close: () => hearing.socket.close() };
}
