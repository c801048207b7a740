import { useState } from 'preact/hooks';
import { Failure } from '../components/coming/states.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { endMail } from '../notices/endMail.ts';
import { noticesWords } from '../words/notices.ts';

/** What the link in a message leads to: one button, as a mail program that only looks at links must end nothing. */
export function UnsubscribePage({ token }: { readonly token: string }) {
  const say = noticesWords.unsubscribe;
  const [done, setDone] = useState(false);
  const { busy, problem, send } = useSending();
  const end = async () => setDone(await send(() => endMail(token)));
  return (
    <section class="narrow">
      <PageTitle text={say.title} />
      <p class="lead">{say.lead}</p>
      {problem !== null &&
        (problem.status === 404 ? (
          <p class="failure" role="alert">
            {say.wrong}
          </p>
        ) : (
          <Failure problem={problem} />
        ))}
      <p role="status">{done && say.done}</p>
      {!done && (
        <button type="button" class="main-action" aria-disabled={busy} onClick={end}>
          {busy ? say.busy : say.submit}
        </button>
      )}
    </section>
  );
}
