import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { NewPersonalToken } from '../api/types.ts';
import { endOfDay } from '../fieldTime.ts';
import { DayField } from '../forms/DayField.tsx';
import { InlineForm } from '../forms/InlineForm.tsx';
import { CloseContext } from '../forms/Opens.tsx';
import { SelectField } from '../forms/SelectField.tsx';
import { TextField } from '../forms/TextField.tsx';
import { useForm } from '../forms/useForm.ts';
import { peopleWords } from '../words/people.ts';

type May = 'read' | 'change';

/** Makes a token for a script; it is handed on, for the page to show it once. */
export function TokenForm({ onDone }: { readonly onDone: (made: NewPersonalToken) => void }) {
  const say = peopleWords.signIns;
  const close = useContext(CloseContext);
  const [name, setName] = useState('');
  const [day, setDay] = useState('');
  const [may, setMay] = useState<May>('read');
  const until = endOfDay(day)?.toISOString() ?? null;
  const form = useForm({
    wrong: {
      name: name.trim() === '' ? say.nameMissing : null,
      until: until === null ? say.untilMissing : null,
    },
    send: async (idempotencyKey) => {
      const body = { name: name.trim(), until, mayChange: may === 'change' };
      onDone(await call<NewPersonalToken>('/tokens', { method: 'POST', body, idempotencyKey }));
    },
    onSent: () => {
      setName('');
      close();
    },
  });
  return (
    <InlineForm form={form} action={say.make} busy={say.making}>
      <TextField
        label={say.tokenName}
        value={name}
        onInput={setName}
        maxLength={300}
        problem={form.problemOf('name')}
      />
      <DayField
        label={say.until}
        value={day}
        onInput={setDay}
        problem={form.problemOf('until') && say.untilMissing}
      />
      <SelectField
        label={say.may}
        value={may}
        options={[
          ['read', say.mayRead],
          ['change', say.mayChange],
        ]}
        onChange={setMay}
      />
    </InlineForm>
  );
}
