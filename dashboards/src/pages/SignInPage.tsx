import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { SignedIn } from '../api/types.ts';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { emailProblem } from '../forms/emailProblem.ts';
import { EmailField, PasswordField } from '../forms/SignInFields.tsx';
import { useForm } from '../forms/useForm.ts';
import { SessionContext } from '../session.ts';
import { words } from '../words.ts';

/** `again`: the session was lost under an open page, which waits as it is. */
export function SignInPage({ again }: { readonly again: boolean }) {
  const { signedIn, person } = useContext(SessionContext);
  const [email, setEmail] = useState(again ? (person?.email ?? '') : '');
  const [password, setPassword] = useState('');
  const { ref, busy, problem, problemOf, onSubmit } = useForm({
    wrong: {
      email: emailProblem(email, words.signIn.emailMissing),
      password: password === '' ? words.signIn.passwordMissing : null,
    },
    send: async () => {
      const body = { email: email.trim(), password };
      const answer = await call<SignedIn>('/session', { method: 'POST', body, keepSession: true });
      signedIn(answer.person);
    },
  });
  const said = problem?.status === 401 ? words.signIn.wrong : problem?.message;

  return (
    <section class="narrow">
      <PageTitle text={words.signIn.title} />
      <p class="lead">{again ? words.signIn.again : words.tagline}</p>
      <form ref={ref} onSubmit={onSubmit} noValidate>
        <div role="alert">{said !== undefined && <p class="failure">{said}</p>}</div>
        <EmailField
          label={words.signIn.email}
          value={email}
          onInput={setEmail}
          problem={problemOf('email')}
        />
        <PasswordField
          label={words.signIn.password}
          kind="current"
          value={password}
          onInput={setPassword}
          problem={problemOf('password')}
        />
        <button type="submit" class="main-action" aria-disabled={busy}>
          {busy ? words.signIn.busy : words.signIn.submit}
        </button>
      </form>
      <p>
        <a class="alone" href="/forgot">
          {words.signIn.forgot}
        </a>
      </p>
    </section>
  );
}
