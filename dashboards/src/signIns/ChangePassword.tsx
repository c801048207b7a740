import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import { useFirstProblem } from '../components/useFirstProblem.ts';
import { useSending } from '../components/useSending.ts';
import { Opens } from '../forms/Opens.tsx';
import { PasswordField } from '../forms/SignInFields.tsx';
import { SHORTEST_PASSWORD } from '../people/shortestPassword.ts';
import { words } from '../words.ts';

/** Changes the own password, which ends every other session. */
export function ChangePassword() {
  const say = words.signIns;
  const [changed, setChanged] = useState(false);
  return (
    <section aria-labelledby="password">
      <h2 id="password">{say.password}</h2>
      <Opens title={say.change}>
        <PasswordForm onDone={() => setChanged(true)} />
      </Opens>
      <p role="status">{changed && say.changed}</p>
    </section>
  );
}

function PasswordForm({ onDone }: { readonly onDone: () => void }) {
  const say = words.signIns;
  const [oldPassword, setOld] = useState('');
  const [newPassword, setNew] = useState('');
  const [tries, setTries] = useState(0);
  const form = useFirstProblem(tries);
  const { busy, problem, fieldProblem, send } = useSending();
  const missing = {
    old: oldPassword === '' ? say.oldMissing : null,
    next: newPassword.length < SHORTEST_PASSWORD ? say.tooShort : null,
  };
  const said = problem?.status === 401 ? say.wrongOld : problem?.message;
  const submit = async (event: Event) => {
    event.preventDefault();
    setTries(tries + 1);
    if (missing.old ?? missing.next) return;
    const sent = await send(async () => {
      await call('/password', { method: 'PUT', body: { oldPassword, newPassword }, keepSession: true });
    });
    if (!sent) return;
    setOld('');
    setNew('');
    setTries(0);
    onDone();
  };
  return (
    <form ref={form} class="inline-form" onSubmit={submit} noValidate>
      <div role="alert">{said !== undefined && <p class="failure">{said}</p>}</div>
      <PasswordField
        label={say.old}
        kind="current"
        value={oldPassword}
        onInput={setOld}
        problem={tries > 0 ? missing.old : null}
      />
      <PasswordField
        label={say.next}
        hint={say.hint}
        kind="new"
        value={newPassword}
        onInput={setNew}
        problem={(tries > 0 && missing.next) || fieldProblem('/newPassword')}
      />
      <button type="submit" class="main-action" disabled={busy}>
        {busy ? say.saving : say.save}
      </button>
    </form>
  );
}
