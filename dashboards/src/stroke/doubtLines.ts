import type { DoneAnalysis } from '../api/types.ts';
import { sideName } from '../sideName.ts';
import { strokeWords } from '../words/stroke.ts';

/** One thing that is doubted of a record, of whichever sides it is. */
export interface DoubtLine {
  readonly title: string;
  readonly detail: string;
}

/** The service names its doubts by a word that may be newer than this page. */
function doubtTitle(doubt: string): string {
  const known: Readonly<Record<string, string>> = strokeWords.doubtKinds;
  return known[doubt] ?? doubt;
}

/** What is doubted, each thing once: a date is of the whole record, and what goes for two sides names both. */
export function doubtLines(doubts: DoneAnalysis['doubts']): DoubtLine[] {
  const sidesOf = new Map<string, string[]>();
  for (const { side, doubt, detail } of doubts) {
    const key = JSON.stringify([doubt, detail]);
    sidesOf.set(key, [...(sidesOf.get(key) ?? []), sideName(side)]);
  }
  return [...sidesOf].map(([key, sides]) => {
    // Each key was made above, of these two.
    const [doubt, detail] = JSON.parse(key) as [string, string];
    const title = doubtTitle(doubt);
    return { title: doubt === 'clock' ? title : [title, ...sides].join(', '), detail };
  });
}
