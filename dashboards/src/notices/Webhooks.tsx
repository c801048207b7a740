import { useState } from 'preact/hooks';
import type { NewWebhook, Page, Webhook } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { Loaded } from '../components/coming/states.tsx';
import { Works } from '../components/focus/Works.tsx';
import { Opens } from '../forms/Opens.tsx';
import { ShownOnce } from '../people/ShownOnce.tsx';
import { noticesWords } from '../words/notices.ts';
import { WebhookForm } from './WebhookForm.tsx';
import { WebhookLine } from './WebhookLine.tsx';

/** The account's webhooks: what each is told, how it answers, and making them. */
export function Webhooks() {
  const say = noticesWords.webhooks;
  const load = useLoad<Page<Webhook>>('/webhooks');
  const [made, setMade] = useState<NewWebhook | null>(null);
  return (
    <section aria-labelledby="webhooks">
      <h2 id="webhooks">{say.title}</h2>
      <p class="about">{say.lead}</p>
      {made !== null && (
        <ShownOnce
          label={say.secret}
          about={say.secretOnce}
          text={made.secret}
          close={say.secretKept}
          onClose={() => setMade(null)}
        />
      )}
      <Loaded load={load}>
        {({ items }) => (
          <Works items={items} none={say.noWebhooks}>
            {(webhook) => <WebhookLine key={webhook.id} webhook={webhook} onChange={load.reload} />}
          </Works>
        )}
      </Loaded>
      <Opens title={say.add}>
        <WebhookForm
          onDone={(webhook) => {
            setMade(webhook);
            load.reload();
          }}
        />
      </Opens>
    </section>
  );
}
