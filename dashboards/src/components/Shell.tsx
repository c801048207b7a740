import type { ComponentChildren } from 'preact';
import { useContext, useState } from 'preact/hooks';
import { asProblem } from '../api/client.ts';
import { SessionContext } from '../session.ts';
import { words } from '../words.ts';
import { Mark } from './Mark.tsx';

function SignOut() {
  const { signOut } = useContext(SessionContext);
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <>
      {problem !== null && <span role="alert">{problem}</span>}
      <button
        type="button"
        class="quiet"
        onClick={() => {
          signOut().catch((error: unknown) => setProblem(asProblem(error).message));
        }}
      >
        {words.nav.signOut}
      </button>
    </>
  );
}

/** What stands around every page. */
export function Shell({ children }: { readonly children: ComponentChildren }) {
  const { state, person } = useContext(SessionContext);
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
        {state === 'in' && (
          <nav aria-label={words.nav.label}>
            <a class="nav-link" href="/">
              {words.nav.coaches}
            </a>
            {person !== null && (
              <span class="who" title={person.email}>
                {person.name}
              </span>
            )}
            <SignOut />
          </nav>
        )}
      </header>
      <main id="content" tabIndex={-1}>
        {children}
      </main>
      <footer class="foot">
        <p>{words.promise}</p>
      </footer>
    </>
  );
}
