import type { Comparison, Service, Warning } from '../api/types.ts';
import { dayText } from '../format.ts';
import { sideName } from '../sideName.ts';
import { compareWords } from '../words/compare.ts';
import { words } from '../words.ts';
import { type Outcome, outcomeOf } from './didItHelp.ts';

interface AnswerProps {
  readonly comparison: Comparison;
  /** Null: two spans were compared, and no work. */
  readonly service: Service | null;
  /** Of the room, newest first; null while they are on their way. */
  readonly warnings: readonly Warning[] | null;
}

/** The warning that the strokes before begin with: it stood when the work was done. */
function warningBefore({ comparison, service, warnings }: AnswerProps): Warning | null {
  const { since } = comparison.before;
  if (since === null || service === null) return null;
  const stood = (warnings ?? []).filter(
    ({ kind, placedAt, clearedAt }) =>
      kind === since && placedAt < service.at && (clearedAt === null || clearedAt >= service.at),
  );
  return stood[0] ?? null;
}

type Helped = keyof typeof compareWords.helped;

/** What is said of the work: the current, and whether the warning that it was done for has gone. */
function helpedBy(outcome: Outcome, isGone: boolean | null): Helped {
  switch (outcome) {
    case 'less':
    case 'mostlyLess':
      return isGone === false ? 'partly' : outcome === 'less' ? 'yes' : 'mostly';
    case 'placeLess':
      return isGone === false ? 'placePartly' : outcome;
    case 'same':
      return isGone === true ? 'likely' : 'same';
    case 'both':
    case 'more':
    case 'placeMore':
    case 'unknown':
      return outcome;
  }
}

/** The question that the page was opened with, answered in a sentence before all numbers. */
export function Answer(props: AnswerProps) {
  const say = compareWords;
  const { comparison, service } = props;
  const { arose } = comparison.after;
  const outcome = outcomeOf(comparison.groups);
  if (service === null)
    return <p class="answer-headline">{say.between[arose === 'dropped-load' ? 'lostLoad' : outcome]}</p>;
  const warning = warningBefore(props);
  const isGone = warning === null ? null : warning.clearedAt !== null;
  const kind = words.services.kinds[service.kind];
  const work = service.side === null ? kind : `${kind}, ${sideName(service.side)}`;
  return (
    <>
      <p class="answer-headline" dir="auto">
        {say.helped[arose === 'dropped-load' ? 'lostLoad' : helpedBy(outcome, isGone)](
          work,
          dayText(service.at),
        )}
      </p>
      {warning !== null && (
        <p>
          {warning.clearedAt === null
            ? say.warningStands(words.warnings.kinds[warning.kind])
            : say.warningGone(words.warnings.kinds[warning.kind], dayText(warning.clearedAt))}
        </p>
      )}
      {arose && <p>{say.warningArose(words.warnings.kinds[arose])}</p>}
    </>
  );
}
