import type { ComponentChildren } from 'preact';
import { useContext } from 'preact/hooks';
import type { Role } from '../../api/types.ts';
import { usePath } from '../../router.ts';
import { SessionContext } from '../../session.ts';
import { words } from '../../words.ts';
import { useSending } from '../sending/useSending.ts';
import { AsOf } from './AsOf.tsx';
import { Mark } from './Mark.tsx';
import { Printed } from './Printed.tsx';

/** The places of the menu, in order. A page for everybody gets its line here. */
const PLACES: readonly { readonly href: string; readonly text: string; readonly for?: Role }[] = [
  { href: '/', text: words.nav.coaches },
  { href: '/people', text: words.nav.people, for: 'dealer' },
  { href: '/settings', text: words.nav.settings },
];

function SignOut() {
  const { signOut } = useContext(SessionContext);
  const { busy, problem, send } = useSending();
  return (
    <>
      {problem !== null && <span role="alert">{problem.message}</span>}
      <button type="button" class="quiet" aria-disabled={busy} onClick={() => void send(signOut)}>
        {words.nav.signOut}
      </button>
    </>
  );
}

function Menu() {
  const { person } = useContext(SessionContext);
  const path = usePath();
  return (
    <nav aria-label={words.nav.label}>
      {PLACES.filter((place) => place.for === undefined || place.for === person?.role).map(
        ({ href, text }) => (
          <a key={href} class="nav-link" href={href} aria-current={href === path ? 'page' : undefined}>
            {text}
          </a>
        ),
      )}
      {person !== null && (
        <span class="who" title={person.email} dir="auto">
          {person.name}
        </span>
      )}
      <SignOut />
    </nav>
  );
}

/** What stands around every page. */
export function Shell({ children }: { readonly children: ComponentChildren }) {
  const { state } = useContext(SessionContext);
  return (
    <>
      <a class="skip" href="#content">
        {words.skip}
      </a>
      <header class="top">
        <a class="home" href="/">
          <Mark />
          <span>{words.name}</span>
        </a>
        {state === 'in' && <Menu />}
      </header>
      <main id="content" tabIndex={-1}>
        {state === 'in' && <AsOf />}
        {state === 'in' && <Printed />}
        {children}
      </main>
      <footer class="foot">
        <p>{words.promise}</p>
      </footer>
    </>
  );
}
