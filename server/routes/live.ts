import { z } from 'zod';
import { tokenOfOpening } from '../access/callers/authenticate.ts';
import type { App } from '../appTypes.ts';
import { Connection } from '../live/connection.ts';
import { openFeeds } from '../live/feeds.ts';
import { Seats } from '../live/seats.ts';
import { holderOf } from '../live/sight.ts';
import { upgradeRequired } from '../problems.ts';
import { LivePush, LiveRequest } from '../schemas/live.ts';

export async function liveRoutes(app: App): Promise<void> {
  const seats = new Seats();
  const feeds = openFeeds({ database: app.database, log: app.log });
  app.addHook('onClose', () => feeds.stop());

  app.route({
    method: 'GET',
    url: '/api/v1/live',
    schema: {
      tags: ['live'],
      summary: 'Watch rooms, over a WebSocket',
      description:
        'Text messages of JSON. Sent: `LiveRequest`; answered: `LivePush` (see `x-messages`). Whoever brings no ' +
        'token with the request sends `{"type": "hello", "token": ...}` first; a cookie counts from our own pages alone. `watch` is answered with the ' +
        'status of the room, then come samples of strokes under way, finished strokes, warnings and each new status, ' +
        'until `unwatch`. What is wrong with a message is answered as `problem`.',
      response: { 101: z.undefined().describe('The connection is a WebSocket from here on.') },
    },
    // Whoever sends no token with the request sends it as the first message.
    config: {
      access: 'public',
      messages: { sent: LiveRequest, answered: LivePush, token: 'personToken' },
      problems: ['not-signed-in', 'upgrade-required'],
    },
    preHandler: async (request) => {
      const token = tokenOfOpening(request);
      if (token !== undefined) await holderOf(app.database, token);
    },
    wsHandler: (socket, request) => {
      new Connection(socket, tokenOfOpening(request) ?? null, {
        database: app.database,
        feeds,
        seats,
        log: request.log,
      });
    },
    handler: () => {
      throw upgradeRequired();
    },
  });
}
