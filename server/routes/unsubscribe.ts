import type { App } from '../appTypes.ts';
import { unsubscribe } from '../notices/unsubscribe.ts';
import { NO_CONTENT } from '../schemas/common.ts';
import { UnsubscribeParams } from '../schemas/settings.ts';
import { UNSUBSCRIBE } from './pages.ts';

const FROM_ONE_ADDRESS = { max: 60, timeWindow: '1 minute' } as const;

/**
 * The link that stands in every message (RFC 8058). A mail program posts to it; a person who follows it sees a page
 * that does the same.
 */
export async function unsubscribeRoutes(app: App): Promise<void> {
  // Mail programs post a form, which says nothing beyond the address.
  app.addContentTypeParser(
    ['application/x-www-form-urlencoded', 'multipart/form-data'],
    { bodyLimit: 1024 },
    (_request, body, done) => {
      body.resume();
      done(null, undefined);
    },
  );

  app.post(
    UNSUBSCRIBE,
    {
      schema: {
        tags: ['session'],
        summary: 'End the messages to a person, by the link in one of them',
        params: UnsubscribeParams,
        response: { 204: NO_CONTENT },
      },
      config: { access: 'public', rateLimit: FROM_ONE_ADDRESS },
    },
    (request) => unsubscribe(app.database, request.params.token),
  );
}
