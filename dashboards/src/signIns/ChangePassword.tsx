import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import { Opens } from '../forms/Opens.tsx';
import { PasswordField } from '../forms/SignInFields.tsx';
import { useForm } from '../forms/useForm.ts';
import { NewPasswordField } from '../people/NewPasswordField.tsx';
import { SHORTEST_PASSWORD } from '../people/shortestPassword.ts';
import { SessionContext } from '../session.ts';
import { peopleWords } from '../words/people.ts';

/** Changes the own password, which ends every other session. */
export function ChangePassword({ onChanged }: { readonly onChanged: () => void }) {
  const say = peopleWords.signIns;
  const [changed, setChanged] = useState(false);
  return (
    <section aria-labelledby="password">
      <h2 id="password">{say.password}</h2>
      <Opens title={say.change}>
        <PasswordForm
          onDone={() => {
            setChanged(true);
            onChanged();
          }}
        />
      </Opens>
      <p role="status">{changed && say.changed}</p>
    </section>
  );
}

function PasswordForm({ onDone }: { readonly onDone: () => void }) {
  const say = peopleWords.signIns;
  const { person } = useContext(SessionContext);
  const [oldPassword, setOld] = useState('');
  const [newPassword, setNew] = useState('');
  const { ref, busy, problem, problemOf, onSubmit } = useForm({
    wrong: {
      oldPassword: oldPassword === '' ? say.oldMissing : null,
      newPassword:
        newPassword.length < SHORTEST_PASSWORD ? say.tooShort : newPassword === oldPassword ? say.same : null,
    },
    send: () => call('/password', { method: 'PUT', body: { oldPassword, newPassword }, keepSession: true }),
    onSent: () => {
      setOld('');
      setNew('');
      onDone();
    },
  });
  const said = problem?.status === 401 ? say.wrongOld : problem?.message;
  return (
    <form ref={ref} class="inline-form" onSubmit={onSubmit} noValidate>
      <div role="alert">{said !== undefined && <p class="failure">{said}</p>}</div>
      <PasswordField
        label={say.old}
        kind="current"
        value={oldPassword}
        onInput={setOld}
        problem={problemOf('oldPassword')}
      />
      <NewPasswordField
        label={say.next}
        hint={say.hint}
        address={person?.email}
        value={newPassword}
        onInput={setNew}
        problem={problemOf('newPassword')}
      />
      <button type="submit" class="main-action" aria-disabled={busy}>
        {busy ? say.saving : say.save}
      </button>
    </form>
  );
}
