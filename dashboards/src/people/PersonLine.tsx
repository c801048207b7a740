import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Colleague, Invited, Role } from '../api/types.ts';
import { Failure } from '../components/coming/states.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { Delete } from '../forms/Delete.tsx';
import { InlineForm } from '../forms/InlineForm.tsx';
import { Opens } from '../forms/Opens.tsx';
import { TextField } from '../forms/TextField.tsx';
import { useForm } from '../forms/useForm.ts';
import { SessionContext } from '../session.ts';
import { peopleWords } from '../words/people.ts';
import { words } from '../words.ts';
import { RoleField } from './RoleField.tsx';

interface PersonLineProps {
  readonly person: Colleague;
  readonly onChange: () => void;
  readonly onInvited: (invited: Invited) => void;
}

/** One person of the account, and what a dealer may change of it. */
export function PersonLine({ person, onChange, onInvited }: PersonLineProps) {
  const say = peopleWords.people;
  const self = useContext(SessionContext).person?.id === person.id;
  const notes = [peopleWords.roles[person.role], self ? say.you : null, person.joined ? null : say.waiting];
  return (
    <li>
      <strong dir="auto">{person.name}</strong>{' '}
      <span class="about">
        <span dir="auto">{person.email}</span>
        {words.joint}
        {notes.filter((note) => note !== null).join(words.joint)}
      </span>
      <Opens title={say.change(person.name)}>
        <ChangeForm person={person} onChange={onChange} />
        {!person.joined && <AnotherLink person={person} onInvited={onInvited} />}
        {person.joined && !self && <SignOut person={person} />}
        <Delete
          path={`/people/${person.id}`}
          name={person.name}
          means={say.remove(person.name)}
          onDone={onChange}
        />
      </Opens>
    </li>
  );
}

function ChangeForm({ person, onChange }: Pick<PersonLineProps, 'person' | 'onChange'>) {
  const say = peopleWords.people;
  const [name, setName] = useState(person.name);
  const [role, setRole] = useState<Role>(person.role);
  const form = useForm<'name'>({
    wrong: { name: name.trim() === '' ? words.forms.nameMissing : null },
    send: () => call(`/people/${person.id}`, { method: 'PATCH', body: { name: name.trim(), role } }),
    onSent: onChange,
  });
  return (
    <InlineForm form={form} action={say.save} busy={say.saving}>
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

/** For a phone that was lost. */
function SignOut({ person }: Pick<PersonLineProps, 'person'>) {
  const say = peopleWords.people;
  const [done, setDone] = useState(false);
  const { busy, problem, send } = useSending();
  const ask = async () =>
    setDone(await send(async () => call(`/people/${person.id}/sessions`, { method: 'DELETE' })));
  return (
    <>
      {problem !== null && <Failure problem={problem} />}
      <button type="button" aria-disabled={busy} onClick={ask}>
        {say.signOut}
      </button>
      <p role="status">{done ? say.signedOut(person.name) : ''}</p>
    </>
  );
}

/** For an invitation that was lost or ran out. */
function AnotherLink({ person, onInvited }: Pick<PersonLineProps, 'person' | 'onInvited'>) {
  const { busy, problem, send } = useSending();
  const ask = () =>
    send(async (idempotencyKey) => {
      onInvited(
        await call<Invited>(`/people/${person.id}/invitation`, { method: 'POST', body: {}, idempotencyKey }),
      );
    });
  return (
    <>
      {problem !== null && <Failure problem={problem} />}
      <button type="button" aria-disabled={busy} onClick={ask}>
        {peopleWords.people.again}
      </button>
    </>
  );
}
