import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { NewPersonalToken, Page, PersonalToken } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { Failure, Loaded } from '../components/coming/states.tsx';
import { Works } from '../components/focus/Works.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { Moment } from '../components/told/Moment.tsx';
import { Opens } from '../forms/Opens.tsx';
import { ShownOnce } from '../people/ShownOnce.tsx';
import { peopleWords } from '../words/people.ts';
import { words } from '../words.ts';
import { TokenForm } from './TokenForm.tsx';

/** The person's tokens for scripts: what each is for, until when, and making and ending them. */
export function Tokens() {
  const say = peopleWords.signIns;
  const load = useLoad<Page<PersonalToken>>('/tokens');
  const [made, setMade] = useState<NewPersonalToken | null>(null);
  return (
    <section aria-labelledby="tokens">
      <h2 id="tokens">{say.tokens}</h2>
      <p class="about">{say.tokensLead}</p>
      {made !== null && (
        <ShownOnce
          label={say.token}
          about={say.tokenOnce}
          text={made.token}
          close={say.tokenKept}
          onClose={() => setMade(null)}
        />
      )}
      <Loaded load={load}>
        {({ items }) => (
          <Works items={items} none={say.noTokens}>
            {(token) => <TokenLine key={token.id} token={token} onEnded={load.reload} />}
          </Works>
        )}
      </Loaded>
      <Opens title={say.make}>
        <TokenForm
          onDone={(token) => {
            setMade(token);
            load.reload();
          }}
        />
      </Opens>
    </section>
  );
}

function TokenLine({ token, onEnded }: { readonly token: PersonalToken; readonly onEnded: () => void }) {
  const say = peopleWords.signIns;
  const { busy, problem, send } = useSending();
  const end = async () => {
    if (await send(async () => call(`/tokens/${token.id}`, { method: 'DELETE' }))) onEnded();
  };
  return (
    <li>
      <strong dir="auto">{token.name}</strong>{' '}
      <span class="about">
        {say.may} {token.mayChange ? say.mayChange : say.mayRead}
        {words.joint}
        {say.ends} <Moment at={token.until} />
        {words.joint}
        {token.lastSeenAt === null ? (
          say.neverUsed
        ) : (
          <>
            {say.used} <Moment at={token.lastSeenAt} ago />
          </>
        )}
      </span>{' '}
      <button
        type="button"
        class="quiet"
        aria-disabled={busy}
        onClick={end}
        aria-label={`${say.endToken}: ${token.name}`}
      >
        {say.endToken}
      </button>
      {problem !== null && <Failure problem={problem} />}
    </li>
  );
}
