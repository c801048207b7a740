import type { ComponentChildren } from 'preact';
import type { CallProblem } from '../../api/client.ts';
import type { Load } from '../../api/useLoad.ts';
import { words } from '../../words.ts';

/** The states that every piece of a page may be in beside its own: on its way, failed, from before. */
export function Waiting() {
  return (
    <p class="waiting" role="status">
      <span class="waiting-bar" aria-hidden="true" />
      {words.loading}
    </p>
  );
}

export function Failure({ problem, retry }: { readonly problem: CallProblem; readonly retry?: () => void }) {
  return (
    <div class="failure" role="alert">
      <p>{problem.status === 404 ? words.problems.notFound : problem.message}</p>
      {retry !== undefined && problem.status !== 404 && (
        <button type="button" onClick={retry}>
          {words.tryAgain}
        </button>
      )}
    </div>
  );
}

interface LoadedProps<Answer> {
  readonly load: Load<Answer>;
  readonly children: (value: Answer) => ComponentChildren;
}

/** Shows what was loaded, or how it stands with it. */
export function Loaded<Answer>({ load, children }: LoadedProps<Answer>) {
  const { value, problem, reload } = load;
  if (value === null) return problem === null ? <Waiting /> : <Failure problem={problem} retry={reload} />;
  return (
    <>
      {/* That there is no network is told once for the whole page. */}
      {problem !== null && problem.status !== 0 && (
        <p class="stale" role="status">
          {words.stale(problem.message)}{' '}
          <button type="button" class="quiet" onClick={reload}>
            {words.tryAgain}
          </button>
        </p>
      )}
      {children(value)}
    </>
  );
}
