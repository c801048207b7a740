import type { CallProblem } from '../api/client.ts';
import { words } from '../words.ts';
import { PageTitle } from './PageTitle.tsx';
import { Failure } from './states.tsx';

interface NotThereProps {
  readonly problem: CallProblem;
  readonly retry: () => void;
  /** How the page is headed where there is no such thing, and where it could not be told. */
  readonly say: { readonly notFound: string; readonly notNow: string };
}

/** In place of a page whose thing did not come. An id that cannot be one is refused; for the reader there is no such thing. */
export function NotThere({ problem, retry, say }: NotThereProps) {
  const isMissing = problem.status === 404 || problem.status === 422;
  return (
    <>
      <PageTitle text={isMissing ? say.notFound : say.notNow} />
      {isMissing ? (
        <p class="failure">{words.problems.notFound}</p>
      ) : (
        <Failure problem={problem} retry={retry} />
      )}
    </>
  );
}
