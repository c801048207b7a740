import type { OverviewSummary } from '../api/types.ts';
import { asksFor } from '../concern.ts';
import { whenText } from '../format.ts';
import { words } from '../words.ts';

interface ChangesProps {
  /** null: still being counted; the place is held so that nothing below it moves away. */
  readonly summary: OverviewSummary | null;
  /** When the person last looked on an earlier visit; null at the first. */
  readonly since: string | null;
}

/** How the lot stands in a sentence, and what changed since the last visit. */
export function Changes({ summary, since }: ChangesProps) {
  const say = words.lot;
  if (summary === null)
    return (
      <div class="lead">
        <p>{say.counting}</p>
        <p>{since === null ? say.firstLook : say.since(whenText(since))}</p>
      </div>
    );
  const { coaches, silentLoggers, changes } = summary;
  const counted: [number, (n: number) => string][] =
    changes === null
      ? []
      : [
          [changes.worse, say.worse],
          [changes.better, say.better],
          [changes.cleared, say.cleared],
          [changes.arrived, say.arrived],
        ];
  const told = counted.filter(([n]) => n > 0).map(([n, text]) => text(n));
  return (
    <div class="lead">
      <p>
        {words.coaches.tally(coaches, asksFor(summary.rooms))}
        {silentLoggers > 0 && ` ${words.coaches.silent(silentLoggers)}`}
      </p>
      <p>
        {since === null ? (
          say.firstLook
        ) : (
          <>
            {say.since(whenText(since))}{' '}
            <strong>{told.length === 0 ? say.nothing : `${told.join(', ')}.`}</strong>
          </>
        )}
      </p>
    </div>
  );
}
