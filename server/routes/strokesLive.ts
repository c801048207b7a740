import pLimit from 'p-limit';
import { z } from 'zod';
import { PieceWriter } from '../../ingest/live/pieceWriter.ts';
import { tokenOf } from '../access/callers/authenticate.ts';
import { loggerHolding } from '../access/callers/loggerTokens.ts';
import type { App } from '../appTypes.ts';
import { inScope } from '../database/openDatabase.ts';
import { Link } from '../links/link.ts';
import { Links } from '../links/links.ts';
import { upgradeRequired } from '../problems.ts';
import { LinkAnswer, LinkMessage } from '../schemas/strokesLive.ts';

const SILENT_AFTER_MS = 60_000;
/**
 * Beginnings and endings at once. Where hundreds come together they wait here, as long as it takes, and not for one of
 * the connections, which others need too and nobody waits for that long.
 */
const TRANSACTIONS_AT_ONCE = 4;

export interface StrokesLiveOptions {
  /** A link on which no message came for so long is dropped; 60 s unless said. */
  readonly linkSilentAfterMs?: number;
}

/** Strokes as they happen, from loggers; `/api/v1/live` is the one for people. */
export async function strokesLiveRoutes(app: App, { linkSilentAfterMs }: StrokesLiveOptions): Promise<void> {
  const links = new Links();
  const inTurn = pLimit(TRANSACTIONS_AT_ONCE);
  const writer = new PieceWriter(
    (pieces) => inScope(app.database, { accounts: pieces.map(({ accountId }) => accountId) }).pool,
  );
  // The sockets are closed by now: what they brought is still kept.
  app.addHook('onClose', async () => {
    await links.settled();
    await writer.idle();
  });

  app.route({
    method: 'GET',
    url: '/api/v1/strokes/live',
    schema: {
      tags: ['strokes'],
      summary: 'Send strokes as they happen, over a WebSocket',
      description:
        'Messages of JSON (text) or CBOR (binary), each answered in its own form. Sent: `LinkMessage`; answered: ' +
        '`LinkAnswer` (see `x-messages`). A stroke is `begin`, any number of `samples`, `end`. `ack` is said once ' +
        'the samples would survive the death of the service, `stored` once the stroke is stored. After a link ' +
        'dropped, `begin` with the same key is answered with `resume` and the piece to go on with. Whoever brings no ' +
        'token with the request sends it in the first message.',
      response: { 101: z.undefined().describe('The connection is a WebSocket from here on.') },
    },
    // Whoever sends no token with the request sends it with the first message.
    config: {
      access: 'public',
      messages: { sent: LinkMessage, answered: LinkAnswer, token: 'loggerToken' },
      problems: ['not-signed-in', 'upgrade-required'],
    },
    preHandler: async (request) => {
      // A browser's cookie is a person's, and means nothing here: so a page of any site may open it.
      if (request.headers.authorization !== undefined) await loggerHolding(app.database, tokenOf(request));
    },
    wsHandler: (socket, request) => {
      const token = request.headers.authorization === undefined ? null : tokenOf(request);
      const link = new Link(socket, token, {
        database: app.database,
        writer,
        inTurn,
        log: request.log,
        silentAfterMs: linkSilentAfterMs ?? SILENT_AFTER_MS,
        onSignedIn: (signedIn, loggerId) => links.signedIn(signedIn, loggerId),
        onTakeOver: (linkId, key) => links.takenOver(linkId, key),
      });
      links.add(link);
      socket.on('close', () => links.remove(link));
    },
    handler: () => {
      throw upgradeRequired();
    },
  });
}
