import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { SignedIn } from '../api/types.ts';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { Field } from '../components/sending/Field.tsx';
import { emailProblem } from '../forms/emailProblem.ts';
import { useForm } from '../forms/useForm.ts';
import { NewPasswordField } from '../people/NewPasswordField.tsx';
import { SHORTEST_PASSWORD } from '../people/shortestPassword.ts';
import { useLinkKey } from '../people/useLinkKey.ts';
import { navigate } from '../router.ts';
import { SessionContext } from '../session.ts';
import { words } from '../words.ts';

/** Behind the one-time link. Its key stands after the `#`, which browsers send to nobody. */
export function SetUpPage() {
  const { signedIn } = useContext(SessionContext);
  const token = useLinkKey();
  const [typed, setTyped] = useState({ name: '', email: '', password: '' });
  const { ref, busy, problem, problemOf, onSubmit } = useForm({
    wrong: {
      name: typed.name.trim() === '' ? words.setUp.nameMissing : null,
      email: emailProblem(typed.email, words.signIn.emailMissing),
      password: typed.password.length < SHORTEST_PASSWORD ? words.setUp.passwordShort : null,
    },
    send: async () => {
      const answer = await call<SignedIn>('/set-up', {
        method: 'POST',
        body: { token, ...typed, email: typed.email.trim(), name: typed.name.trim() },
        keepSession: true,
      });
      signedIn(answer.person);
      navigate('/');
    },
  });

  const control = (name: keyof typeof typed, autocomplete: string) => ({
    name,
    autocomplete,
    value: typed[name],
    onInput: (event: { currentTarget: HTMLInputElement }) =>
      setTyped({ ...typed, [name]: event.currentTarget.value }),
  });

  return (
    <section class="narrow">
      <PageTitle text={words.setUp.title} />
      {token === '' ? (
        <p class="failure" role="alert">
          {words.setUp.noToken}
        </p>
      ) : (
        <form ref={ref} onSubmit={onSubmit} noValidate>
          <p class="lead">{words.setUp.lead}</p>
          <div role="alert">{problem !== null && <p class="failure">{problem.message}</p>}</div>
          <Field label={words.setUp.name} problem={problemOf('name')}>
            {(ids) => <input {...ids} {...control('name', 'name')} type="text" />}
          </Field>
          <Field label={words.setUp.email} problem={problemOf('email')}>
            {(ids) => <input {...ids} {...control('email', 'username')} type="email" />}
          </Field>
          <NewPasswordField
            label={words.setUp.password}
            hint={words.setUp.passwordHint}
            address={typed.email}
            value={typed.password}
            onInput={(password) => setTyped({ ...typed, password })}
            problem={problemOf('password')}
          />
          <button type="submit" class="main-action" aria-disabled={busy}>
            {busy ? words.setUp.busy : words.setUp.submit}
          </button>
        </form>
      )}
    </section>
  );
}
