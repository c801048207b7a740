import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { SignedIn } from '../api/types.ts';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { useForm } from '../forms/useForm.ts';
import { navigate } from '../router.ts';
import { SessionContext } from '../session.ts';
import { peopleWords } from '../words/people.ts';
import { NewPasswordField } from './NewPasswordField.tsx';
import { SHORTEST_PASSWORD } from './shortestPassword.ts';
import { useLinkKey } from './useLinkKey.ts';
import { useLinkOver } from './useLinkOver.ts';

interface NewPasswordProps {
  readonly say: {
    readonly title: string;
    readonly lead: string;
    readonly submit: string;
    readonly busy: string;
  };
  readonly hint: string;
  /** Of the API, before the link's key. */
  readonly path: string;
}

/** Behind a link that sets a password. Its key stands after the `#`, which browsers send to nobody. */
export function NewPassword({ say, hint, path }: NewPasswordProps) {
  const { signedIn } = useContext(SessionContext);
  const key = useLinkKey();
  const [password, setPassword] = useState('');
  const { ref, busy, problem, problemOf, onSubmit } = useForm({
    wrong: { password: password.length < SHORTEST_PASSWORD ? peopleWords.newPassword.tooShort : null },
    send: async () => {
      const answer = await call<SignedIn>(`${path}/${encodeURIComponent(key)}`, {
        method: 'POST',
        body: { password },
        keepSession: true,
      });
      signedIn(answer.person);
      navigate('/');
    },
  });
  const over = useLinkOver(path, key);
  const said = problem?.status === 404 ? peopleWords.newPassword.over : problem?.message;

  return (
    <section class="narrow">
      <PageTitle text={say.title} />
      {key === '' || over ? (
        <p class="failure" role="alert">
          {key === '' ? peopleWords.newPassword.noKey : peopleWords.newPassword.over}
        </p>
      ) : (
        <form ref={ref} onSubmit={onSubmit} noValidate>
          <p class="lead">{say.lead}</p>
          <div role="alert">{said !== undefined && <p class="failure">{said}</p>}</div>
          <NewPasswordField
            label={peopleWords.newPassword.password}
            hint={hint}
            value={password}
            onInput={setPassword}
            problem={problemOf('password')}
          />
          <button type="submit" class="main-action" aria-disabled={busy}>
            {busy ? say.busy : say.submit}
          </button>
        </form>
      )}
    </section>
  );
}
