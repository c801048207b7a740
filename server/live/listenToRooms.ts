import type { FastifyBaseLogger } from 'fastify';
import pg from 'pg';
import { PIECES_CHANNEL } from '../../ingest/live/pieceStatement.ts';
import { ROOM_CHANNEL, type RoomKey, roomOfNotice } from '../database/roomChannel.ts';

const TRY_AGAIN_AFTER_MS = 1000;

interface ListenerParts {
  /** Whose settings the listener's own connection takes. */
  readonly pool: pg.Pool;
  readonly log: FastifyBaseLogger;
  /** The room's results were written. */
  readonly onRoom: (room: RoomKey) => void;
  /** Samples of a stroke under way came. */
  readonly onPieces: (room: RoomKey) => void;
  /** The connection was lost and is there again: something may have been missed in between. */
  readonly onGap: () => void;
}

interface RoomListener {
  /** Resolves once notices come in; rejects where the database cannot be reached. */
  ready(): Promise<unknown>;
  stop(): Promise<void>;
}

/**
 * Listens, on a connection of its own, to the notices of what is new in rooms. It connects when first asked
 * to, as a process without watchers needs none of it, and again by itself after a loss.
 */
export function listenToRooms({ pool, log, onRoom, onPieces, onGap }: ListenerParts): RoomListener {
  let connected: Promise<pg.Client> | null = null;
  let retry: NodeJS.Timeout | null = null;
  let stopped = false;

  const again = (): void => {
    if (stopped || retry !== null) return;
    retry = setTimeout(() => {
      retry = null;
      ready().then(onGap, again);
    }, TRY_AGAIN_AFTER_MS);
  };
  const connect = async (): Promise<pg.Client> => {
    const client = new pg.Client(pool.options);
    let over = false;
    const lost = (error?: Error): void => {
      // An error is followed by the end, which may come when the next connection is there already.
      if (stopped || over) return;
      over = true;
      log.warn({ err: error }, 'The connection that live updates come by was lost.');
      connected = null;
      again();
    };
    client.on('notification', ({ channel, payload }) => {
      const room = roomOfNotice(payload);
      if (room === null) return;
      if (channel === PIECES_CHANNEL) onPieces(room);
      else onRoom(room);
    });
    client.on('error', lost);
    client.on('end', () => lost());
    try {
      await client.connect();
      await client.query(`listen ${ROOM_CHANNEL}; listen ${PIECES_CHANNEL}`);
      return client;
    } catch (error) {
      // Whoever asked for it is told, and it is nothing that was lost.
      over = true;
      client
        .end()
        .catch((err: unknown) => log.debug({ err }, 'A connection that never listened ended badly.'));
      throw error;
    }
  };
  const ready = (): Promise<pg.Client> => {
    if (stopped) return Promise.reject(new Error('The listener was stopped.'));
    connected ??= connect().catch((error: unknown) => {
      connected = null;
      throw error;
    });
    return connected;
  };
  return {
    ready,
    stop: async () => {
      stopped = true;
      if (retry !== null) clearTimeout(retry);
      // One that could not connect has nothing to end.
      const client = await connected?.catch(() => null);
      await client?.end();
    },
  };
}
