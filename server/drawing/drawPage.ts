import type { FastifyRequest } from 'fastify';
import { sessionCookieOf } from '../access/signIn/sessionCookie.ts';
import type { Drawer, DrawnPage } from '../schemas/drawing.ts';
import { within } from '../within.ts';
import { askAsCaller } from './askAsCaller.ts';

/** What a page asks once it has its first answers, in the order in which it stands there: more is out of sight. */
const MOST_FURTHER = 12;
/** All answers together: a history of years comes faster behind the page than within it. */
const MOST_LETTERS = 120_000;
const WHO_ASKS = '/session';

/**
 * Draws the page that a person asks for from what the API answers that person. Null where nobody is signed in, and
 * for pages that are not drawn here. What is not answered within so many milliseconds the page asks itself.
 */
export async function drawPage(
  drawer: Drawer,
  request: FastifyRequest,
  withinMs: number,
): Promise<DrawnPage | null> {
  const [path = '', ...query] = request.url.split('?');
  const search = query.length === 0 ? '' : `?${query.join('?')}`;
  const first = isVisitOfSomebody(request) ? drawer.firstQuestions(path) : [];
  if (first.length === 0) return null;
  const answers = new Map<string, unknown>();
  const until = performance.now() + withinMs;
  let lettersLeft = MOST_LETTERS;
  const take = async (question: string) => {
    const text = await askAsCaller(request, question);
    if (text === null || text.length > lettersLeft || performance.now() > until) return;
    lettersLeft -= text.length;
    answers.set(question, JSON.parse(text));
  };
  const askAll = (questions: readonly string[]) =>
    within<unknown>(until - performance.now(), Promise.all(questions.map(take)), null);
  const draw = () => drawer.draw({ path, search, language: likedLanguage(request), answers });

  await askAll(first);
  if (!answers.has(WHO_ASKS)) return null;
  const begun = draw();
  const further = begun.missing.filter((question) => !first.includes(question)).slice(0, MOST_FURTHER);
  if (further.length === 0) return begun;
  await askAll(further);
  return draw();
}

/** What fetches a page to keep it, as a service worker does, is to have it without anybody's answers. */
function isVisitOfSomebody(request: FastifyRequest): boolean {
  const mode = request.headers['sec-fetch-mode'] ?? 'navigate';
  return request.method === 'GET' && mode === 'navigate' && sessionCookieOf(request) !== undefined;
}

/** Browsers name the one that they say themselves first. */
function likedLanguage(request: FastifyRequest): string | undefined {
  return /^[\w-]+/.exec(request.headers['accept-language'] ?? '')?.[0];
}
