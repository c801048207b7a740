import type { Page, WebhookDelivery } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { Loaded } from '../components/coming/states.tsx';
import { Moment } from '../components/told/Moment.tsx';
import { Scroll } from '../components/told/Scroll.tsx';
import { noticesWords } from '../words/notices.ts';
import { words } from '../words.ts';

const SHOWN = 20;
/** While something is on its way for the first time it is asked again so soon. */
const LOOK_AGAIN_MS = 1500;

/** The latest that was sent to a webhook, and what became of it. */
export function Deliveries({ webhookId }: { readonly webhookId: string }) {
  const say = noticesWords.webhooks;
  const load = useLoad<Page<WebhookDelivery>>(
    `/webhooks/${webhookId}/deliveries?limit=${SHOWN}`,
    ({ items }) =>
      items.some(({ state, attempts }) => state === 'waiting' && attempts === 0) ? LOOK_AGAIN_MS : null,
  );
  return (
    <Loaded load={load}>
      {({ items }) =>
        items.length === 0 ? (
          <p>
            {say.log}: {say.logEmpty}
          </p>
        ) : (
          <>
            <Scroll of={say.log}>
              <table>
                <caption>{say.log}</caption>
                <thead>
                  <tr>
                    {[say.news, say.when, say.outcome, say.answer, say.attempts].map((title) => (
                      <th key={title} scope="col">
                        {title}
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {items.map((delivery) => (
                    <Line key={delivery.id} delivery={delivery} />
                  ))}
                </tbody>
              </table>
            </Scroll>
            <button type="button" class="quiet" onClick={load.reload}>
              {say.look}
            </button>
          </>
        )
      }
    </Loaded>
  );
}

function Line({ delivery }: { readonly delivery: WebhookDelivery }) {
  const { event, madeAt, state, status, error, attempts } = delivery;
  return (
    <tr>
      <th scope="row">{noticesWords.webhooks.eventNames[event]}</th>
      <td>
        <Moment at={madeAt} />
      </td>
      <td>{noticesWords.webhooks.states[state]}</td>
      <td>{error ?? status ?? words.none}</td>
      <td>{attempts}</td>
    </tr>
  );
}
