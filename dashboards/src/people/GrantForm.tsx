import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Grant, NewGrant } from '../api/types.ts';
import { entriesOf } from '../entriesOf.ts';
import { endOfDay } from '../fieldTime.ts';
import { DayField } from '../forms/DayField.tsx';
import { emailProblem } from '../forms/emailProblem.ts';
import { InlineForm } from '../forms/InlineForm.tsx';
import { CloseContext } from '../forms/Opens.tsx';
import { SelectField } from '../forms/SelectField.tsx';
import { TextField } from '../forms/TextField.tsx';
import { useForm } from '../forms/useForm.ts';
import { peopleWords } from '../words/people.ts';

interface GrantFormProps {
  readonly coachId: string;
  readonly onDone: (grant: NewGrant) => void;
}

const ROLES = entriesOf(peopleWords.sight.roles);

/** Lets a person of another account see one coach, until a day if wanted. */
export function GrantForm({ coachId, onDone }: GrantFormProps) {
  const say = peopleWords.sight;
  const close = useContext(CloseContext);
  const [email, setEmail] = useState('');
  const [role, setRole] = useState<Grant['role']>('owner');
  const [day, setDay] = useState('');
  const form = useForm<'email' | 'until'>({
    wrong: { email: emailProblem(email, peopleWords.people.emailMissing), until: null },
    send: async (idempotencyKey) => {
      const until = endOfDay(day)?.toISOString() ?? null;
      const body = { email: email.trim(), role, ...(until === null ? {} : { until }) };
      onDone(await call<NewGrant>(`/coaches/${coachId}/grants`, { method: 'POST', body, idempotencyKey }));
    },
    onSent: () => {
      setEmail('');
      close();
    },
  });
  return (
    <InlineForm form={form} action={say.submit} busy={say.sending}>
      <TextField
        label={peopleWords.people.email}
        value={email}
        onInput={setEmail}
        maxLength={254}
        problem={form.problemOf('email')}
      />
      <SelectField label={say.as} value={role} options={ROLES} onChange={setRole} />
      <DayField
        label={say.until}
        hint={say.untilHint}
        value={day}
        onInput={setDay}
        problem={form.problemOf('until')}
      />
    </InlineForm>
  );
}
