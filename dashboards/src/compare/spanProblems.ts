import { compareWords } from '../words/compare.ts';
import { SPAN_NAMES, type SpanName, type Spans } from './question.ts';

const DAY_BEFORE: Partial<Record<SpanName, SpanName>> = { beforeTo: 'beforeFrom', afterTo: 'afterFrom' };

/**
 * What is wrong with each of the days, in words; empty where two spans can be compared. `today` as the days are held.
 * Spans that overlap, or that stand the other way round, would be answered with the opposite of what happened.
 */
export function spanProblems(spans: Spans, today: string): Partial<Record<SpanName, string>> {
  const say = compareWords;
  const problemOf = (name: SpanName): string | null => {
    const day = spans[name];
    if (day === '') return say.dayMissing;
    if (day > today) return say.dayAhead;
    const first = DAY_BEFORE[name];
    if (first !== undefined && day < spans[first]) return say.dayReversed;
    if (name !== 'afterFrom' || spans.beforeTo === '' || day > spans.beforeTo) return null;
    const isEarlier = spans.beforeFrom !== '' && day < spans.beforeFrom;
    return isEarlier ? say.afterEarlier : say.spansOverlap;
  };
  return Object.fromEntries(
    SPAN_NAMES.flatMap((name) => {
      const problem = problemOf(name);
      return problem === null ? [] : [[name, problem]];
    }),
  );
}
