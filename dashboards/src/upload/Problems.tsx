import type { Direction, StrokesPreview } from '../api/types.ts';
import { words } from '../words.ts';

interface ProblemsProps {
  readonly problems: StrokesPreview['problems'];
  readonly directions: readonly (Direction | null)[];
}

/** What keeps the recording from being stored; what a field above asks for is told in that field's own words. */
export function Problems({ problems, directions }: ProblemsProps) {
  const say = words.upload;
  const told = problems.flatMap(({ pointer, detail }) => {
    if (pointer === '/startedAt') return [say.startMissing];
    if (pointer === '/rateHz') return [say.rateMissing];
    if (pointer === '/direction')
      return directions.flatMap((direction, i) => (direction === null ? [say.directionMissing(i + 1)] : []));
    return [detail];
  });
  return (
    <section aria-labelledby="problems" role="status">
      <h2 id="problems">{say.problems}</h2>
      {told.length === 0 ? (
        <p>{say.ready}</p>
      ) : (
        <ul>
          {told.map((text) => (
            <li key={text} dir="auto">
              {text}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
