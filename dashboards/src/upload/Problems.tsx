import type { Direction, StrokesPreview } from '../api/types.ts';
import { uploadWords } from '../words/upload.ts';
import { startProblem } from './startProblem.ts';

interface ProblemsProps {
  readonly preview: StrokesPreview;
  readonly directions: readonly (Direction | null)[];
}

/** What keeps the recording from being stored; what a field above asks for is told in that field's own words. */
export function Problems({ preview, directions }: ProblemsProps) {
  const say = uploadWords;
  // What a person has said of the columns stands for titles.
  const isUntitled = preview.columns.every(({ title, kind }) => title === null && kind === 'none');
  const told = preview.problems.flatMap(({ pointer, detail }) => {
    if (pointer === '/startedAt') return [startProblem(preview) ?? detail];
    if (isUntitled && pointer.startsWith('/line/')) return [say.noTitles];
    if (pointer === '/rateHz') return [say.rateMissing];
    if (pointer === '/direction')
      return directions.flatMap((direction, i) => (direction === null ? [say.directionMissing(i + 1)] : []));
    const column = /^\/column\/(\d+)$/.exec(pointer)?.[1];
    return [column === undefined ? detail : say.columnMissing(Number(column))];
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
