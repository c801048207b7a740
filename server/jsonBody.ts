import type { App } from './appTypes.ts';
import { ProblemError } from './problems.ts';

const UTF8 = new TextDecoder('utf-8', { fatal: true });

/**
 * The form that bodies have unless a route takes others: JSON in UTF-8. `__proto__` and `constructor.prototype` are
 * refused, and so are bytes that are not UTF-8, which would otherwise be replaced unseen. An empty body is no body:
 * clients that always name a content type may still send a DELETE.
 */
export function takeJson(app: App): void {
  const parse = app.getDefaultJsonParser('error', 'error');
  app.removeAllContentTypeParsers();
  app.addContentTypeParser('application/json', { parseAs: 'buffer' }, (request, body, done) => {
    if (body.length === 0) return done(null, undefined);
    let text: string;
    try {
      text = UTF8.decode(Buffer.from(body));
    } catch (cause) {
      return done(new ProblemError('malformed-request', 'The body is not UTF-8.', { cause }));
    }
    return parse(request, text, done);
  });
}
