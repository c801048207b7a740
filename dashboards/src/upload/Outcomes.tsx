import { useLayoutEffect, useRef } from 'preact/hooks';
import type { StrokeOutcome } from '../api/types.ts';
import { uploadWords } from '../words/upload.ts';

/** What became of each stroke of the file. */
export function Outcomes({ results, roomId }: { results: readonly StrokeOutcome[]; roomId: string }) {
  const say = uploadWords;
  const heading = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => heading.current?.focus(), [results]);
  const of = (outcome: StrokeOutcome['outcome']) => results.filter((result) => result.outcome === outcome);
  const kept = results.flatMap(({ strokeId }, i) => (strokeId === null ? [] : [{ strokeId, number: i + 1 }]));
  const refused = of('rejected');
  return (
    <section class="note" aria-labelledby="stored">
      <h2 id="stored" ref={heading} tabIndex={-1}>
        {say.done}
      </h2>
      {(['stored', 'duplicate'] as const).map((outcome) =>
        of(outcome).length === 0 ? null : <p key={outcome}>{say.outcomes[outcome](of(outcome).length)}</p>,
      )}
      {refused.length > 0 && (
        <>
          <p>{say.outcomes.rejected(refused.length)}</p>
          <ul>
            {refused.map(({ key, problem }) => (
              <li key={key} dir="auto">
                {problem?.detail}
              </li>
            ))}
          </ul>
        </>
      )}
      <ul class="actions">
        {kept.map(({ strokeId, number }) => (
          <li key={strokeId}>
            <a href={`/strokes/${strokeId}`}>{say.openStroke(number)}</a>
          </li>
        ))}
        <li>
          <a href={`/rooms/${roomId}`}>{say.toRoom}</a>
        </li>
      </ul>
    </section>
  );
}
