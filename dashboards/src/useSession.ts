import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { call, untilSessionChanges, whenSessionLost } from './api/client.ts';
import { forgetKeptAnswers } from './api/keptAnswers.ts';
import { forgetAnswers, knownAnswer, learnAnswer } from './api/knownAnswers.ts';
import { SESSION, SETTINGS } from './api/questions.ts';
import type { Person, Settings } from './api/types.ts';
import { useReconnect } from './api/useReconnect.ts';
import { DEVICE, readAs } from './reader.ts';
import { forgetPerson, type Remembered, remember, remembered, whenAnotherTabChanges } from './remember.ts';
import { navigate } from './router.ts';
import type { Session } from './session.ts';

type Held = Pick<Session, 'state' | 'person' | 'settings' | 'epoch'>;

/** What of the person is known without asking: by what the service said in this visit, else in the last one. */
function settingsOf(person: Person): Settings {
  // What is known under this question came from it.
  const said = knownAnswer(SETTINGS)?.value as Settings | undefined;
  if (said !== undefined) return said;
  const last = remembered();
  return last?.person.id === person.id ? last.settings : DEVICE;
}

/** What says the same as before stays the very same: whatever is drawn from it stands. */
const sameOr = (before: Settings, now: Settings): Settings =>
  JSON.stringify(before) === JSON.stringify(now) ? before : now;

/** Who is signed in by what the service sent along with the page, if it did. */
function sentAlong(): Remembered | null {
  const said = knownAnswer(SESSION)?.value as { person: Person } | undefined;
  return said === undefined ? null : { person: said.person, settings: settingsOf(said.person) };
}

/** Whoever was signed in here last is taken at its word until the service answers: a slow network holds nobody up. */
function begin(): Held {
  const last = sentAlong() ?? remembered();
  if (last === null) return { state: 'asking', person: null, settings: DEVICE, epoch: 0 };
  readAs(last.settings);
  return { state: 'in', ...last, epoch: 0 };
}

export function useSession(): Session {
  const [held, setHeld] = useState(begin);
  /** Whose answers this tab holds; it stays while the session is lost, so that another person is told apart. */
  const holder = useRef(held.person?.id ?? null);
  const isOut = useRef(false);

  // Before any page has an answer to keep: they are kept by person.
  useLayoutEffect(() => {
    if (held.person !== null) remember({ person: held.person, settings: held.settings });
  }, []);

  const setSettings = useCallback((settings: Settings) => {
    learnAnswer(SETTINGS, settings);
    readAs(settings);
    const last = remembered();
    if (last !== null) remember({ ...last, settings });
    setHeld((h) => ({ ...h, settings: sameOr(h.settings, settings) }));
  }, []);

  /** Nothing that one person saw is shown to, or kept for, another. `anew`: what was refused is asked again. */
  const enter = useCallback(
    (person: Person, anew: boolean) => {
      const isOther = holder.current !== null && holder.current !== person.id;
      if (isOther) forgetAnswers();
      const settings = settingsOf(person);
      holder.current = person.id;
      isOut.current = false;
      readAs(settings);
      remember({ person, settings });
      void forgetKeptAnswers(person.id);
      setHeld((h) => ({
        state: 'in',
        person,
        settings: sameOr(h.settings, settings),
        // While nobody was signed in, all that was asked for was refused.
        epoch: anew || isOther || h.state === 'out' ? h.epoch + 1 : h.epoch,
      }));
      // Without an answer the former settings go on.
      const isSameSession = untilSessionChanges();
      call<Settings>(SETTINGS).then(
        (said) => isSameSession() && setSettings(said),
        () => {},
      );
    },
    [setSettings],
  );

  const ask = useCallback(() => {
    const isSameSession = untilSessionChanges();
    call<{ person: Person }>(SESSION).then(
      ({ person }) => isSameSession() && enter(person, false),
      // A refusal is told by `whenSessionLost`; without network the pages say so themselves.
      () => setHeld((h) => (h.state === 'asking' ? { ...h, state: 'in' } : h)),
    );
  }, [enter]);

  useEffect(() => {
    whenSessionLost(() => {
      isOut.current = true;
      forgetPerson();
      void forgetKeptAnswers(null);
      setHeld((h) => ({ ...h, state: 'out' }));
    });
    ask();
    return whenAnotherTabChanges((now) => {
      // What this tab would show and keep from here on is another person's.
      if (now !== null && holder.current !== null && now.person.id !== holder.current) location.reload();
      // Signed out there, or in again: this tab neither goes on showing what was seen nor goes on asking who it is.
      else if (now === null || isOut.current) ask();
    });
  }, [ask]);
  useReconnect(held.state === 'in' && held.person === null, ask);

  const signedIn = useCallback((person: Person) => enter(person, true), [enter]);
  const signOut = useCallback(async () => {
    await call('/session', { method: 'DELETE', keepSession: true });
    holder.current = null;
    isOut.current = true;
    forgetPerson();
    forgetAnswers();
    await forgetKeptAnswers(null);
    readAs(DEVICE);
    setHeld((h) => ({ state: 'out', person: null, settings: DEVICE, epoch: h.epoch }));
    navigate('/');
  }, []);
  return useMemo(() => ({ ...held, signedIn, signOut, setSettings }), [held, signedIn, signOut, setSettings]);
}
