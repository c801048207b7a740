import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import { PageTitle } from '../components/PageTitle.tsx';
import { useFirstProblem } from '../components/useFirstProblem.ts';
import { useSending } from '../components/useSending.ts';
import { EmailField } from '../forms/SignInFields.tsx';
import { words } from '../words.ts';

/** Asks for a link by which the password is set anew; says the same whoever asks. */
export function ForgotPage() {
  const say = words.forgot;
  const [email, setEmail] = useState('');
  const [sent, setSent] = useState(false);
  const [tries, setTries] = useState(0);
  const form = useFirstProblem(tries);
  const { busy, problem, fieldProblem, send } = useSending();
  const missing = email.trim() === '' ? words.signIn.emailMissing : null;
  const submit = async (event: Event) => {
    event.preventDefault();
    setTries(tries + 1);
    if (missing !== null) return;
    const asked = await send(async () => {
      const body = { email: email.trim() };
      await call('/password-resets', { method: 'POST', body, keepSession: true });
    });
    setSent(asked);
  };
  return (
    <section class="narrow">
      <PageTitle text={say.title} />
      <p class="lead">{say.lead}</p>
      <form ref={form} onSubmit={submit} noValidate>
        <div role="alert">{problem !== null && <p class="failure">{problem.message}</p>}</div>
        <EmailField
          label={words.signIn.email}
          value={email}
          onInput={setEmail}
          problem={(tries > 0 && missing) || fieldProblem('/email')}
        />
        <button type="submit" class="main-action" disabled={busy}>
          {busy ? say.busy : say.submit}
        </button>
      </form>
      <p role="status">{sent && say.sent}</p>
      <p>
        <a href="/">{say.back}</a>
      </p>
    </section>
  );
}
