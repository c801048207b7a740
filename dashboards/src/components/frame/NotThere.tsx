import type { CallProblem } from '../../api/client.ts';
import { words } from '../../words.ts';
import { Failure } from '../coming/states.tsx';
import { PageTitle } from './PageTitle.tsx';

/** In place of a page whose thing is not there for this reader, with a way on. */
export function NothingThere({ title }: { readonly title: string }) {
  return (
    <>
      <PageTitle text={title} />
      <p class="failure">{words.problems.notFound}</p>
      <p>
        <a class="alone" href="/">
          {words.missing.back}
        </a>
      </p>
    </>
  );
}

interface NotThereProps {
  readonly problem: CallProblem;
  readonly retry: () => void;
  /** How the page is headed where there is no such thing, and where it could not be told. */
  readonly say: { readonly notFound: string; readonly notNow: string };
}

/** In place of a page whose thing did not come. An id that cannot be one is refused; for the reader there is no such thing. */
export function NotThere({ problem, retry, say }: NotThereProps) {
  if (problem.status === 404 || problem.status === 422) return <NothingThere title={say.notFound} />;
  return (
    <>
      <PageTitle text={say.notNow} />
      <Failure problem={problem} retry={retry} />
    </>
  );
}
