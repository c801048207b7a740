/** The last answers by question, so that what was there is there at once. */
export interface Known {
  readonly value: unknown;
  /** When the service gave it, milliseconds since 1970. */
  readonly atMs: number;
}

const known = new Map<string, Known>();
/** What a person has looked at within some minutes; a visit of a working day must not fill a phone with samples. */
const MOST_KNOWN = 200;

/** Questions whose answers came along with the page, and which nobody has asked yet. */
const given = new Set<string>();
/** From the beginning of the visit: what came with the page is out of date after it. */
const GIVEN_WORTH_MS = 10_000;

/** Notes what a page that is being drawn would have to ask. */
let missing: Set<string> | null = null;

export function knownAnswer(question: string): Known | null {
  const found = known.get(question);
  if (found === undefined) missing?.add(question);
  return found ?? null;
}

export function learnAnswer(question: string, value: unknown): Known {
  const answered = { value, atMs: Date.now() };
  // What was learnt last stands at the end.
  known.delete(question);
  known.set(question, answered);
  const [oldest] = known.keys();
  if (known.size > MOST_KNOWN) known.delete(oldest);
  return answered;
}

export function forgetAnswers(): void {
  known.clear();
  given.clear();
}

/** Takes the answers that came along with the page: the first who asks one of these is not to ask the service. */
export function giveAnswers(answers: Iterable<readonly [string, unknown]>): void {
  for (const [question, value] of answers) {
    learnAnswer(question, value);
    given.add(question);
  }
}

export const isGiven = (question: string): boolean => given.has(question);

/** The answer that came along with the page, once and while it is new. */
export function takeGiven(question: string): Known | null {
  const isNew = given.delete(question) && performance.now() < GIVEN_WORTH_MS;
  return isNew ? (known.get(question) ?? null) : null;
}

/** Answers what was looked up and not known while `draw` ran. */
export function whatIsMissing(draw: () => void): ReadonlySet<string> {
  const noted = new Set<string>();
  missing = noted;
  try {
    draw();
  } finally {
    missing = null;
  }
  return noted;
}
