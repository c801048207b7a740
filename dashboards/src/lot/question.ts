import type { Verdict } from '../api/types.ts';
import { VERDICT_ORDER } from '../concern.ts';
import { words } from '../words.ts';

/** Which coaches the page's address asks for; what is empty asks for nothing. */
export interface LotQuestion {
  readonly q: string;
  readonly model: string;
  readonly room: string;
  readonly verdict: Verdict | '';
  readonly silent: boolean;
  readonly changed: boolean;
  readonly sort: Sort;
}

// The keys of the words are the sorts that the service knows.
export const SORTS = Object.keys(words.lot.sorts) as Sort[];
export type Sort = keyof typeof words.lot.sorts;

const isSort = (text: string | null): text is Sort => SORTS.some((sort) => sort === text);
const isVerdict = (text: string | null): text is Verdict => VERDICT_ORDER.some((verdict) => verdict === text);

/** Reads the address; what it does not know counts as not asked. */
export function lotQuestionOf(search: string): LotQuestion {
  const given = new URLSearchParams(search);
  const verdict = given.get('verdict');
  const sort = given.get('sort');
  return {
    q: given.get('q') ?? '',
    model: given.get('model') ?? '',
    room: given.get('room') ?? '',
    verdict: isVerdict(verdict) ? verdict : '',
    silent: given.get('silent') === 'true',
    changed: given.get('changed') === 'true',
    sort: isSort(sort) ? sort : 'concern',
  };
}

/** The same as an address, or as the service takes it: only what is asked for. */
function parametersOf(question: LotQuestion): URLSearchParams {
  const asked = new URLSearchParams();
  for (const name of ['q', 'model', 'room', 'verdict'] as const) {
    const text = question[name].trim();
    if (text !== '') asked.set(name, text);
  }
  if (question.silent) asked.set('silent', 'true');
  if (question.changed) asked.set('changed', 'true');
  if (question.sort !== 'concern') asked.set('sort', question.sort);
  return asked;
}

export function lotAddress(question: LotQuestion): string {
  const asked = parametersOf(question).toString();
  return asked === '' ? '/' : `/?${asked}`;
}

/** Where the service answers it. Without an earlier look nothing can have changed since. */
export function lotPath(question: LotQuestion, since: string | null): string {
  const asked = parametersOf(since === null ? { ...question, changed: false } : question);
  if (since !== null) asked.set('since', since);
  const text = asked.toString();
  return text === '' ? '/overview' : `/overview?${text}`;
}

export const asksForAll = (question: LotQuestion): boolean =>
  lotAddress({ ...question, sort: 'concern' }) === '/';

/** What is asked for and in which order, part by part, for paper. */
export function askedInWords(question: LotQuestion): string[] {
  const say = words.lot;
  const { q, model, room, verdict, silent, changed, sort } = question;
  return [
    q === '' ? null : say.searched(q),
    verdict === '' ? null : `${say.verdict}: ${words.verdicts[verdict].word}`,
    model === '' ? null : `${say.model}: ${model}`,
    room === '' ? null : `${say.room}: ${room}`,
    silent ? say.onlySilent : null,
    changed ? say.onlyChanged : null,
    say.sorts[sort],
  ].filter((part) => part !== null);
}
