import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { NewPersonalToken } from '../api/types.ts';
import { Failure } from '../components/states.tsx';
import { useFirstProblem } from '../components/useFirstProblem.ts';
import { useSending } from '../components/useSending.ts';
import { endOfDay } from '../fieldTime.ts';
import { CloseContext } from '../forms/Opens.tsx';
import { SelectField } from '../forms/SelectField.tsx';
import { TextField } from '../forms/TextField.tsx';
import { DayField } from '../people/DayField.tsx';
import { words } from '../words.ts';

type May = 'read' | 'change';

/** Makes a token for a script; it is handed on, for the page to show it once. */
export function TokenForm({ onDone }: { readonly onDone: (made: NewPersonalToken) => void }) {
  const say = words.signIns;
  const close = useContext(CloseContext);
  const [name, setName] = useState('');
  const [day, setDay] = useState('');
  const [may, setMay] = useState<May>('read');
  const [tries, setTries] = useState(0);
  const form = useFirstProblem(tries);
  const { busy, problem, fieldProblem, send } = useSending();
  const until = endOfDay(day)?.toISOString() ?? null;
  const missing = {
    name: name.trim() === '' ? say.nameMissing : null,
    until: until === null ? say.untilMissing : null,
  };
  const submit = async (event: Event) => {
    event.preventDefault();
    setTries(tries + 1);
    if (missing.name ?? missing.until) return;
    const body = { name: name.trim(), until, mayChange: may === 'change' };
    const sent = await send(async (idempotencyKey) => {
      onDone(await call<NewPersonalToken>('/tokens', { method: 'POST', body, idempotencyKey }));
    });
    if (!sent) return;
    setName('');
    setTries(0);
    close();
  };
  return (
    <form ref={form} class="inline-form" onSubmit={submit} noValidate>
      {problem !== null && <Failure problem={problem} />}
      <TextField
        label={say.tokenName}
        value={name}
        onInput={setName}
        maxLength={300}
        problem={(tries > 0 && missing.name) || fieldProblem('/name')}
      />
      <DayField
        label={say.until}
        value={day}
        onInput={setDay}
        problem={(tries > 0 && missing.until) || (fieldProblem('/until') === null ? null : say.untilMissing)}
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
      <button type="submit" class="main-action" disabled={busy}>
        {busy ? say.making : say.make}
      </button>
    </form>
  );
}
