import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import { call, whenSessionLost } from './api/client.ts';
import type { Person } from './api/types.ts';
import { forgetAnswers } from './api/useLoad.ts';
import { lazily } from './components/Lazily.tsx';
import { Shell } from './components/Shell.tsx';
import { CoachesPage } from './pages/CoachesPage.tsx';
import { ComparePage } from './pages/ComparePage.tsx';
import { MissingPage } from './pages/MissingPage.tsx';
import { RoomPage } from './pages/RoomPage.tsx';
import { SetUpPage } from './pages/SetUpPage.tsx';
import { SignInPage } from './pages/SignInPage.tsx';
import { StrokePage } from './pages/StrokePage.tsx';
import { matchPath, navigate, useLinks, usePath } from './router.ts';
import { type Session, SessionContext } from './session.ts';

const UploadPage = lazily(async () => (await import('./pages/UploadPage.tsx')).UploadPage);

function Page({ path }: { readonly path: string }) {
  const room = matchPath('/rooms/:id', path);
  const compare = matchPath('/rooms/:id/compare', path);
  const upload = matchPath('/rooms/:id/upload', path);
  const stroke = matchPath('/strokes/:id', path);
  if (path === '/') return <CoachesPage />;
  if (room !== null) return <RoomPage key={room.id} id={room.id} />;
  if (compare !== null) return <ComparePage key={compare.id} id={compare.id} />;
  if (upload !== null) return <UploadPage key={upload.id} id={upload.id} />;
  if (stroke !== null) return <StrokePage key={stroke.id} id={stroke.id} />;
  return <MissingPage />;
}

function useSession(): Session {
  const [held, setHeld] = useState<Pick<Session, 'state' | 'person' | 'epoch'>>({
    state: 'asking',
    person: null,
    epoch: 0,
  });
  useEffect(() => {
    whenSessionLost(() => setHeld((h) => ({ ...h, state: 'out' })));
    call<{ person: Person }>('/session').then(
      ({ person }) => setHeld((h) => ({ ...h, state: 'in', person })),
      // A refusal has been told above; without network the pages say so themselves.
      () => setHeld((h) => (h.state === 'asking' ? { ...h, state: 'in' } : h)),
    );
  }, []);
  const signedIn = useCallback((person: Person) => {
    setHeld((h) => ({ state: 'in', person, epoch: h.epoch + 1 }));
  }, []);
  const signOut = useCallback(async () => {
    await call('/session', { method: 'DELETE', keepSession: true });
    forgetAnswers();
    setHeld((h) => ({ state: 'out', person: null, epoch: h.epoch }));
    navigate('/');
  }, []);
  return useMemo(() => ({ ...held, signedIn, signOut }), [held, signedIn, signOut]);
}

/** The pages stay as they are under the sign-in form, so that a lost session loses nothing typed. */
export function App() {
  const path = usePath();
  const session = useSession();
  useLinks();
  const settingUp = path === '/set-up';
  const asked = session.state === 'out' && !settingUp;
  return (
    <SessionContext.Provider value={session}>
      <Shell>
        {asked && <SignInPage again={session.person !== null} />}
        {settingUp && <SetUpPage />}
        {!settingUp && (session.state === 'in' || session.person !== null) && (
          <div hidden={asked}>
            <Page path={path} />
          </div>
        )}
      </Shell>
    </SessionContext.Provider>
  );
}
