import { useContext } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Page, SessionPlace } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { useRefresh } from '../api/useRefresh.ts';
import { Failure, Loaded } from '../components/coming/states.tsx';
import { Works } from '../components/focus/Works.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { Moment } from '../components/told/Moment.tsx';
import { whenText } from '../format.ts';
import { SessionContext } from '../session.ts';
import { peopleWords } from '../words/people.ts';
import { words } from '../words.ts';

interface PlacesProps {
  /** Another one once others may have ended. */
  readonly version: string;
}

/** Where the person is signed in, with the way out of each. */
export function Places({ version }: PlacesProps) {
  const say = peopleWords.signIns;
  const { signOut } = useContext(SessionContext);
  const load = useLoad<Page<SessionPlace>>('/sessions?limit=500');
  useRefresh(version, load.reload);
  const { busy, problem, send } = useSending();
  const end = async (id: string) => {
    if (await send(async () => call(`/sessions/${id}`, { method: 'DELETE' }))) load.reload();
  };
  const endAll = () =>
    send(async () => {
      await call('/sessions', { method: 'DELETE', keepSession: true });
      await signOut();
    });
  return (
    <section aria-labelledby="places">
      <h2 id="places">{say.places}</h2>
      {problem !== null && <Failure problem={problem} />}
      <Loaded load={load}>
        {({ items }) => (
          <Works items={items}>
            {(place) => (
              <li key={place.id}>
                {say.since} <Moment at={place.createdAt} />
                {words.joint}
                {place.current ? (
                  say.here
                ) : (
                  <>
                    {say.used} <Moment at={place.lastSeenAt} ago />{' '}
                    <button
                      type="button"
                      class="quiet"
                      aria-disabled={busy}
                      aria-label={say.endPlaceSince(whenText(place.createdAt))}
                      onClick={() => end(place.id)}
                    >
                      {say.endPlace}
                    </button>
                  </>
                )}
              </li>
            )}
          </Works>
        )}
      </Loaded>
      <button type="button" aria-disabled={busy} onClick={endAll}>
        {say.everywhere}
      </button>
    </section>
  );
}
