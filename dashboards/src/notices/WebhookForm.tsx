import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { NewWebhook, Severity } from '../api/types.ts';
import { Tick } from '../components/sending/Tick.tsx';
import { InlineForm } from '../forms/InlineForm.tsx';
import { CloseContext } from '../forms/Opens.tsx';
import { SelectField } from '../forms/SelectField.tsx';
import { TextField } from '../forms/TextField.tsx';
import { useForm } from '../forms/useForm.ts';
import { noticesWords } from '../words/notices.ts';

const EVENTS = ['warning.opened', 'warning.worse', 'warning.cleared', 'logger.silent'] as const;
type Event = (typeof EVENTS)[number];

/** Which addresses are taken besides, the service says. */
const isWebAddress = (text: string): boolean => /^https?:\/\/[^\s/]/i.test(text);

/** Makes a webhook; it is handed on, for the page to show its secret once. */
export function WebhookForm({ onDone }: { readonly onDone: (made: NewWebhook) => void }) {
  const say = noticesWords.webhooks;
  const close = useContext(CloseContext);
  const [url, setUrl] = useState('');
  const [severity, setSeverity] = useState<Severity>('watch');
  const [events, setEvents] = useState<readonly Event[]>(EVENTS);
  const form = useForm<'url' | 'events' | 'severity'>({
    wrong: {
      url: url.trim() === '' ? say.urlMissing : isWebAddress(url.trim()) ? null : say.urlWrong,
      events: events.length === 0 ? say.eventsMissing : null,
      severity: null,
    },
    send: async (idempotencyKey) => {
      const body = { url: url.trim(), severity, events };
      onDone(await call<NewWebhook>('/webhooks', { method: 'POST', body, idempotencyKey }));
    },
    onSent: () => {
      setUrl('');
      close();
    },
  });
  const eventsProblem = form.problemOf('events');
  return (
    <InlineForm form={form} action={say.add} busy={say.adding}>
      <TextField
        label={say.url}
        hint={say.urlHint}
        value={url}
        onInput={setUrl}
        maxLength={2000}
        problem={form.problemOf('url')}
      />
      <fieldset>
        <legend>{say.events}</legend>
        {eventsProblem !== null && <p class="field-problem">{eventsProblem}</p>}
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
          ['watch', noticesWords.notices.fromWatch],
          ['service', noticesWords.notices.fromService],
          ['stop', noticesWords.notices.fromStop],
        ]}
        onChange={setSeverity}
        problem={form.problemOf('severity')}
      />
    </InlineForm>
  );
}
