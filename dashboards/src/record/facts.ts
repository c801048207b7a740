import type { RecordedAct } from '../api/types.ts';
import { dayText } from '../format.ts';
import { sideName } from '../sideName.ts';
import { peopleWords } from '../words/people.ts';
import { recordWords } from '../words/record.ts';
import { words } from '../words.ts';

/** What is told of an act besides its name: whom or what it was done to. */
export function factsOf({ details }: Pick<RecordedAct, 'details'>): string[] {
  const text = (name: string): string | null => {
    const value = details[name];
    return typeof value === 'string' && value !== '' ? value : null;
  };
  const known = (names: Readonly<Record<string, string>>, value: string | null) =>
    value === null ? null : (names[value] ?? value);
  const side = text('side');
  const until = text('until');
  return [
    text('name'),
    text('email'),
    known(peopleWords.roles, text('role')),
    known({ ...words.services.kinds, ...words.warnings.kinds }, text('kind')),
    side === null ? null : sideName(side),
    text('key'),
    text('url'),
    until === null ? null : recordWords.record.until(dayText(until)),
  ].filter((fact) => fact !== null);
}
