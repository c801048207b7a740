import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Webhook } from '../api/types.ts';
import { Failure } from '../components/coming/states.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { Moment } from '../components/told/Moment.tsx';
import { Delete } from '../forms/Delete.tsx';
import { Opens } from '../forms/Opens.tsx';
import { noticesWords } from '../words/notices.ts';
import { words } from '../words.ts';
import { Deliveries } from './Deliveries.tsx';

interface WebhookLineProps {
  readonly webhook: Webhook;
  readonly onChange: () => void;
}

/** One webhook: how it answers, a test, what was sent to it, switching it off and removing it. */
export function WebhookLine({ webhook, onChange }: WebhookLineProps) {
  const say = noticesWords.webhooks;
  const { id, url, enabled } = webhook;
  const [tests, setTests] = useState(0);
  const { busy, problem, send } = useSending();
  const test = () =>
    send(async (idempotencyKey) => {
      await call(`/webhooks/${id}/test`, { method: 'POST', idempotencyKey });
      setTests((n) => n + 1);
    });
  const turn = async () => {
    const body = { enabled: !enabled };
    if (await send(async () => call(`/webhooks/${id}`, { method: 'PATCH', body }))) onChange();
  };
  return (
    <li>
      <strong dir="ltr" class="address">
        {url}
      </strong>{' '}
      <span class="about">
        {webhook.events.map((event) => say.eventNames[event]).join(words.joint)}
        <State webhook={webhook} />
      </span>
      <Opens title={say.change(url)}>
        {problem !== null && <Failure problem={problem} />}
        <p>
          {enabled && (
            <button type="button" aria-disabled={busy} onClick={test}>
              {busy ? say.testing : say.test}
            </button>
          )}{' '}
          <button type="button" class="quiet" aria-disabled={busy} onClick={turn}>
            {enabled ? say.switchOff : say.switchOn}
          </button>
        </p>
        <Deliveries key={tests} webhookId={id} />
        <Delete path={`/webhooks/${id}`} name={url} means={say.remove} onDone={onChange} />
      </Opens>
    </li>
  );
}

function State({ webhook: { enabled, disabledBecause, failing } }: Pick<WebhookLineProps, 'webhook'>) {
  const say = noticesWords.webhooks;
  if (!enabled)
    return (
      <>
        {words.joint}
        {say.off} {disabledBecause}
      </>
    );
  if (failing === null) return null;
  return (
    <>
      {words.joint}
      {say.failing(failing.times)}
      {words.joint}
      {say.tryAt} <Moment at={failing.tryAt} />
    </>
  );
}
