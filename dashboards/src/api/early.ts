import { matchPath } from '../router.ts';
import { isGiven } from './knownAnswers.ts';
import { FIRST_FEW_COACHES, LAST_LOOK, oneCoach, room, roomStatus, SESSION, SETTINGS } from './questions.ts';
import { send } from './send.ts';

/** A page asks what it begins with as soon as it is drawn. */
const WORTH_MS = 5000;

/** By question: what was asked before anything was drawn. */
const asked = new Map<string, Promise<Response>>();

/**
 * Asks what the page at this address begins with: a slow phone takes as long to draw it for the first time as the service
 * takes to answer. Whoever asks the same first is given that answer.
 */
export function askEarly(path: string): void {
  for (const question of firstQuestions(path).filter((each) => !isGiven(each))) {
    const answer = whole(question);
    asked.set(question, answer);
    const drop = () => asked.get(question) === answer && asked.delete(question);
    // Whoever takes it learns of a failure; what nobody takes soon is out of date.
    const dropSoon = () => setTimeout(drop, WORTH_MS);
    answer.then(dropSoon, dropSoon);
  }
}

/** Read to its end, also where nobody takes it: nothing is left on the line. */
async function whole(question: string): Promise<Response> {
  const answer = await send(question);
  return new Response(await answer.arrayBuffer(), { status: answer.status, headers: answer.headers });
}

export function takeEarly(question: string): Promise<Response> | undefined {
  const answer = asked.get(question);
  asked.delete(question);
  return answer;
}

/** After signing in, whatever was answered before is worth nothing. */
export function forgetEarly(): void {
  asked.clear();
}

/** What a page at this address asks for sure, before it knows any answer. */
export function firstQuestions(path: string): string[] {
  return [SESSION, SETTINGS, ...questionsOf(path)];
}

function questionsOf(path: string): string[] {
  if (path === '/') return [FIRST_FEW_COACHES, LAST_LOOK];
  const ofCoach = matchPath('/coaches/:id', path);
  if (ofCoach !== null) return [oneCoach(ofCoach.id)];
  const ofRoom = matchPath('/rooms/:id', path);
  if (ofRoom !== null) return [room(ofRoom.id), roomStatus(ofRoom.id)];
  return [];
}
