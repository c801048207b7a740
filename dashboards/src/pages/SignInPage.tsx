import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { SignedIn } from '../api/types.ts';
import { PageTitle } from '../components/PageTitle.tsx';
import { useFirstProblem } from '../components/useFirstProblem.ts';
import { useSending } from '../components/useSending.ts';
import { EmailField, PasswordField } from '../forms/SignInFields.tsx';
import { SessionContext } from '../session.ts';
import { words } from '../words.ts';

/** `again`: the session was lost under an open page, which waits as it is. */
export function SignInPage({ again }: { readonly again: boolean }) {
  const { signedIn } = useContext(SessionContext);
  const [email, setEmail] = useState('');
  const [password, setPassword] = useState('');
  const [tries, setTries] = useState(0);
  const tried = tries > 0;
  const form = useFirstProblem(tries);
  const { busy, problem, send } = useSending();
  const emailProblem = tried && email.trim() === '' ? words.signIn.emailMissing : null;
  const passwordProblem = tried && password === '' ? words.signIn.passwordMissing : null;
  const said = problem?.status === 401 || problem?.status === 422 ? words.signIn.wrong : problem?.message;

  const submit = async (event: Event) => {
    event.preventDefault();
    setTries(tries + 1);
    if (email.trim() === '' || password === '') return;
    await send(async () => {
      const body = { email: email.trim(), password };
      const answer = await call<SignedIn>('/session', { method: 'POST', body, keepSession: true });
      signedIn(answer.person);
    });
  };

  return (
    <section class="narrow">
      <PageTitle text={words.signIn.title} />
      <p class="lead">{again ? words.signIn.again : words.tagline}</p>
      <form ref={form} onSubmit={submit} noValidate>
        <div role="alert">{said !== undefined && <p class="failure">{said}</p>}</div>
        <EmailField label={words.signIn.email} value={email} onInput={setEmail} problem={emailProblem} />
        <PasswordField
          label={words.signIn.password}
          kind="current"
          value={password}
          onInput={setPassword}
          problem={passwordProblem}
        />
        <button type="submit" class="main-action" disabled={busy}>
          {busy ? words.signIn.busy : words.signIn.submit}
        </button>
      </form>
      <p>
        <a class="alone" href="/forgot">
          {words.forgot.link}
        </a>
      </p>
    </section>
  );
}
