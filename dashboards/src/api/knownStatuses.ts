import type { LivePush } from './types.ts';

type StatusPush = Extract<LivePush, { type: 'status' }>;

/** What a feed has heard of each room's status. */
interface KnownStatuses {
  /** A room's status is asked for only to hear anything at all: if the answer is what is known, it is no news. */
  ask(roomId: string): void;
  /** Whether whoever watches is to hear of a status; it is then known. */
  isNews(push: StatusPush): boolean;
  /** A new link begins with nothing known. */
  forget(): void;
}

export function knownStatuses(): KnownStatuses {
  let asked: string | null = null;
  const latest = new Map<string, string>();
  return {
    ask: (roomId) => {
      asked = roomId;
    },
    isNews: ({ roomId, status }) => {
      const text = JSON.stringify(status);
      const isAnswer = asked === roomId;
      if (isAnswer) asked = null;
      if (isAnswer && latest.get(roomId) === text) return false;
      latest.set(roomId, text);
      return true;
    },
    forget: () => {
      asked = null;
      latest.clear();
    },
  };
}
