import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Grant, NewGrant } from '../api/types.ts';
import { Failure } from '../components/states.tsx';
import { useFirstProblem } from '../components/useFirstProblem.ts';
import { useSending } from '../components/useSending.ts';
import { endOfDay } from '../fieldTime.ts';
import { CloseContext } from '../forms/Opens.tsx';
import { SelectField } from '../forms/SelectField.tsx';
import { TextField } from '../forms/TextField.tsx';
import { words } from '../words.ts';
import { DayField } from './DayField.tsx';

interface GrantFormProps {
  readonly coachId: string;
  readonly onDone: (grant: NewGrant) => void;
}

const ROLES = Object.entries(words.sight.roles) as [Grant['role'], string][];

/** Lets a person of another account see one coach, until a day if wanted. */
export function GrantForm({ coachId, onDone }: GrantFormProps) {
  const say = words.sight;
  const close = useContext(CloseContext);
  const [email, setEmail] = useState('');
  const [role, setRole] = useState<Grant['role']>('owner');
  const [day, setDay] = useState('');
  const [tries, setTries] = useState(0);
  const form = useFirstProblem(tries);
  const { busy, problem, fieldProblem, send } = useSending();
  const missing = email.trim() === '' ? words.people.emailMissing : null;
  const submit = async (event: Event) => {
    event.preventDefault();
    setTries(tries + 1);
    if (missing !== null) return;
    const until = endOfDay(day)?.toISOString() ?? null;
    const body = { email: email.trim(), role, ...(until === null ? {} : { until }) };
    const sent = await send(async (idempotencyKey) => {
      onDone(await call<NewGrant>(`/coaches/${coachId}/grants`, { method: 'POST', body, idempotencyKey }));
    });
    if (!sent) return;
    setEmail('');
    setTries(0);
    close();
  };
  return (
    <form ref={form} class="inline-form" onSubmit={submit} noValidate>
      {problem !== null && <Failure problem={problem} />}
      <TextField
        label={words.people.email}
        value={email}
        onInput={setEmail}
        maxLength={254}
        problem={(tries > 0 && missing) || fieldProblem('/email')}
      />
      <SelectField label={say.as} value={role} options={ROLES} onChange={setRole} />
      <DayField
        label={say.until}
        hint={say.untilHint}
        value={day}
        onInput={setDay}
        problem={fieldProblem('/until')}
      />
      <button type="submit" class="main-action" disabled={busy}>
        {busy ? say.sending : say.submit}
      </button>
    </form>
  );
}
