import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Invited, Role } from '../api/types.ts';
import { emailProblem } from '../forms/emailProblem.ts';
import { InlineForm } from '../forms/InlineForm.tsx';
import { CloseContext } from '../forms/Opens.tsx';
import { TextField } from '../forms/TextField.tsx';
import { useForm } from '../forms/useForm.ts';
import { peopleWords } from '../words/people.ts';
import { words } from '../words.ts';
import { RoleField } from './RoleField.tsx';

/** Invites a colleague; the link is handed on, for the page to show it once. */
export function InviteForm({ onDone }: { readonly onDone: (invited: Invited) => void }) {
  const say = peopleWords.people;
  const close = useContext(CloseContext);
  const [email, setEmail] = useState('');
  const [name, setName] = useState('');
  const [role, setRole] = useState<Role>('technician');
  const form = useForm({
    wrong: {
      email: emailProblem(email, say.emailMissing),
      name: name.trim() === '' ? words.forms.nameMissing : null,
    },
    send: async (idempotencyKey) => {
      const body = { email: email.trim(), name: name.trim(), role };
      onDone(await call<Invited>('/people', { method: 'POST', body, idempotencyKey }));
    },
    onSent: () => {
      setEmail('');
      setName('');
      close();
    },
  });
  return (
    <InlineForm form={form} action={say.send} busy={say.sending}>
      <TextField
        label={say.email}
        value={email}
        onInput={setEmail}
        maxLength={254}
        problem={form.problemOf('email')}
      />
      <TextField
        label={say.name}
        value={name}
        onInput={setName}
        maxLength={300}
        problem={form.problemOf('name')}
      />
      <RoleField role={role} onChange={setRole} />
    </InlineForm>
  );
}
