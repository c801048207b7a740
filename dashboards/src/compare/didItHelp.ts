import type { ComparedGroup } from '../api/types.ts';

/**
 * What became of the running current: `less`, `more`, both (`mostlyLess` where far more went than came), `same` where
 * no change is told apart, `unknown` where there were too few strokes.
 */
export type Outcome = 'less' | 'mostlyLess' | 'both' | 'more' | 'same' | 'unknown';

/** A side that is relieved gives part of its load to the other: so much more must have gone than come. A choice, no source. */
const FAR_MORE = 3;

/** Only changes that are sure count: a change within its uncertainty is none. */
export function outcomeOf(groups: readonly ComparedGroup[]): Outcome {
  const shifts = groups.flatMap((group) =>
    group.shifts.filter(({ measure, shift }) => measure === 'runningAmps' && shift !== null),
  );
  if (shifts.length === 0) return 'unknown';
  const sure = shifts.flatMap(({ shift, excludesZero }) => (excludesZero && shift !== null ? [shift] : []));
  const sum = (amps: readonly number[]) => amps.reduce((total, each) => total + Math.abs(each), 0);
  const [gone, come] = [sum(sure.filter((amps) => amps < 0)), sum(sure.filter((amps) => amps > 0))];
  if (gone === 0) return come === 0 ? 'same' : 'more';
  if (come === 0) return 'less';
  if (gone >= FAR_MORE * come) return 'mostlyLess';
  return come >= FAR_MORE * gone ? 'more' : 'both';
}
