import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Invited, Role } from '../api/types.ts';
import { Failure } from '../components/states.tsx';
import { useFirstProblem } from '../components/useFirstProblem.ts';
import { useSending } from '../components/useSending.ts';
import { CloseContext } from '../forms/Opens.tsx';
import { SelectField } from '../forms/SelectField.tsx';
import { TextField } from '../forms/TextField.tsx';
import { words } from '../words.ts';
import { ROLE_CHOICES } from './roles.ts';

/** Invites a colleague; the link is handed on, for the page to show it once. */
export function InviteForm({ onDone }: { readonly onDone: (invited: Invited) => void }) {
  const say = words.people;
  const close = useContext(CloseContext);
  const [email, setEmail] = useState('');
  const [name, setName] = useState('');
  const [role, setRole] = useState<Role>('technician');
  const [tries, setTries] = useState(0);
  const form = useFirstProblem(tries);
  const { busy, problem, fieldProblem, send } = useSending();
  const missing = {
    email: email.trim() === '' ? say.emailMissing : null,
    name: name.trim() === '' ? words.forms.nameMissing : null,
  };
  const submit = async (event: Event) => {
    event.preventDefault();
    setTries(tries + 1);
    if (missing.email ?? missing.name) return;
    const body = { email: email.trim(), name: name.trim(), role };
    const sent = await send(async (idempotencyKey) => {
      onDone(await call<Invited>('/people', { method: 'POST', body, idempotencyKey }));
    });
    if (!sent) return;
    setEmail('');
    setName('');
    setTries(0);
    close();
  };
  return (
    <form ref={form} class="inline-form" onSubmit={submit} noValidate>
      {problem !== null && <Failure problem={problem} />}
      <TextField
        label={say.email}
        value={email}
        onInput={setEmail}
        maxLength={254}
        problem={(tries > 0 && missing.email) || fieldProblem('/email')}
      />
      <TextField
        label={say.name}
        value={name}
        onInput={setName}
        maxLength={300}
        problem={(tries > 0 && missing.name) || fieldProblem('/name')}
      />
      <SelectField
        label={say.role}
        value={role}
        options={ROLE_CHOICES}
        onChange={setRole}
        hint={words.roleMeans[role]}
      />
      <button type="submit" class="main-action" disabled={busy}>
        {busy ? say.sending : say.send}
      </button>
    </form>
  );
}
