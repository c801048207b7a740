import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { NewWebhook, Severity } from '../api/types.ts';
import { Failure } from '../components/states.tsx';
import { Tick } from '../components/Tick.tsx';
import { useFirstProblem } from '../components/useFirstProblem.ts';
import { useSending } from '../components/useSending.ts';
import { CloseContext } from '../forms/Opens.tsx';
import { SelectField } from '../forms/SelectField.tsx';
import { TextField } from '../forms/TextField.tsx';
import { words } from '../words.ts';

const EVENTS = ['warning.opened', 'warning.worse', 'warning.cleared', 'logger.silent'] as const;
type Event = (typeof EVENTS)[number];

/** Makes a webhook; it is handed on, for the page to show its secret once. */
export function WebhookForm({ onDone }: { readonly onDone: (made: NewWebhook) => void }) {
  const say = words.webhooks;
  const close = useContext(CloseContext);
  const [url, setUrl] = useState('');
  const [severity, setSeverity] = useState<Severity>('watch');
  const [events, setEvents] = useState<readonly Event[]>(EVENTS);
  const [tries, setTries] = useState(0);
  const form = useFirstProblem(tries);
  const { busy, problem, fieldProblem, send } = useSending();
  const missing = {
    url: url.trim() === '' ? say.urlMissing : null,
    events: events.length === 0 ? say.eventsMissing : null,
  };
  const submit = async (event: globalThis.Event) => {
    event.preventDefault();
    setTries(tries + 1);
    if (missing.url ?? missing.events) return;
    const body = { url: url.trim(), severity, events };
    const sent = await send(async (idempotencyKey) => {
      onDone(await call<NewWebhook>('/webhooks', { method: 'POST', body, idempotencyKey }));
    });
    if (!sent) return;
    setUrl('');
    setTries(0);
    close();
  };
  return (
    <form ref={form} class="inline-form" onSubmit={submit} noValidate>
      {problem !== null && <Failure problem={problem} />}
      <TextField
        label={say.url}
        hint={say.urlHint}
        value={url}
        onInput={setUrl}
        maxLength={2000}
        problem={(tries > 0 && missing.url) || fieldProblem('/url')}
      />
      <fieldset>
        <legend>{say.events}</legend>
        {tries > 0 && missing.events !== null && <p class="field-problem">{missing.events}</p>}
        {EVENTS.map((each) => (
          <div key={each}>
            <Tick
              label={say.eventNames[each]}
              on={events.includes(each)}
              onChange={(on) => setEvents(EVENTS.filter((one) => (one === each ? on : events.includes(one))))}
            />
          </div>
        ))}
      </fieldset>
      <SelectField
        label={say.severity}
        value={severity}
        options={[
          ['watch', words.notices.fromWatch],
          ['service', words.notices.fromService],
          ['stop', words.notices.fromStop],
        ]}
        onChange={setSeverity}
        problem={fieldProblem('/severity')}
      />
      <button type="submit" class="main-action" disabled={busy}>
        {busy ? say.adding : say.add}
      </button>
    </form>
  );
}
