import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { ResetRequested } from '../api/types.ts';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { emailProblem } from '../forms/emailProblem.ts';
import { EmailField } from '../forms/SignInFields.tsx';
import { useForm } from '../forms/useForm.ts';
import { peopleWords } from '../words/people.ts';
import { words } from '../words.ts';

/** Asks for a link by which the password is set anew; says the same whoever asks. */
export function ForgotPage() {
  const say = peopleWords.forgot;
  const [email, setEmail] = useState('');
  const [made, setMade] = useState<ResetRequested | null>(null);
  const { ref, busy, problem, problemOf, onSubmit } = useForm({
    wrong: { email: emailProblem(email, words.signIn.emailMissing) },
    send: async () => {
      setMade(null);
      const body = { email: email.trim() };
      setMade(await call<ResetRequested>('/password-resets', { method: 'POST', body, keepSession: true }));
    },
  });
  return (
    <section class="narrow">
      <PageTitle text={say.title} />
      <p class="lead">{say.lead}</p>
      <form ref={ref} onSubmit={onSubmit} noValidate>
        <div role="alert">{problem !== null && <p class="failure">{problem.message}</p>}</div>
        <EmailField
          label={words.signIn.email}
          value={email}
          onInput={setEmail}
          problem={problemOf('email')}
        />
        <button type="submit" class="main-action" aria-disabled={busy}>
          {busy ? say.busy : say.submit}
        </button>
      </form>
      <p role="status">{made !== null && (made.mails ? say.sent : say.printed)}</p>
      <p>
        <a href="/">{say.back}</a>
      </p>
    </section>
  );
}
