import { lazily } from './components/coming/Lazily.tsx';
import { Upright } from './components/coming/Upright.tsx';
import { useFocusBack } from './components/focus/useFocusBack.ts';
import { Shell } from './components/frame/Shell.tsx';
import { CoachesPage } from './pages/CoachesPage.tsx';
import { CoachPage } from './pages/CoachPage.tsx';
import { MissingPage } from './pages/MissingPage.tsx';
import { RoomPage } from './pages/RoomPage.tsx';
import { SignInPage } from './pages/SignInPage.tsx';
import { matchPath, useLinks, usePath } from './router.ts';
import { SessionContext } from './session.ts';
import { useSession } from './useSession.ts';

const ComparePage = lazily(async () => (await import('./pages/ComparePage.tsx')).ComparePage);
const ForgotPage = lazily(async () => (await import('./pages/ForgotPage.tsx')).ForgotPage);
const JoinPage = lazily(async () => (await import('./pages/JoinPage.tsx')).JoinPage);
const KeptPage = lazily(async () => (await import('./pages/KeptPage.tsx')).KeptPage);
const NewCoachPage = lazily(async () => (await import('./pages/NewCoachPage.tsx')).NewCoachPage);
const NoticesPage = lazily(async () => (await import('./pages/NoticesPage.tsx')).NoticesPage);
const PeoplePage = lazily(async () => (await import('./pages/PeoplePage.tsx')).PeoplePage);
const RecordPage = lazily(async () => (await import('./pages/RecordPage.tsx')).RecordPage);
const ResetPage = lazily(async () => (await import('./pages/ResetPage.tsx')).ResetPage);
const SetUpPage = lazily(async () => (await import('./pages/SetUpPage.tsx')).SetUpPage);
const SettingsPage = lazily(async () => (await import('./pages/SettingsPage.tsx')).SettingsPage);
const SignInsPage = lazily(async () => (await import('./pages/SignInsPage.tsx')).SignInsPage);
const StrokePage = lazily(async () => (await import('./pages/StrokePage.tsx')).StrokePage);
const UnsubscribePage = lazily(async () => (await import('./pages/UnsubscribePage.tsx')).UnsubscribePage);
const UploadPage = lazily(async () => (await import('./pages/UploadPage.tsx')).UploadPage);

/** Null where there is none. */
function pageAt(path: string) {
  const coach = matchPath('/coaches/:id', path);
  const room = matchPath('/rooms/:id', path);
  const compare = matchPath('/rooms/:id/compare', path);
  const upload = matchPath('/rooms/:id/upload', path);
  const stroke = matchPath('/strokes/:id', path);
  if (path === '/') return <CoachesPage />;
  if (path === '/new-coach') return <NewCoachPage />;
  if (path === '/settings') return <SettingsPage />;
  if (path === '/notices') return <NoticesPage />;
  if (path === '/people') return <PeoplePage />;
  if (path === '/record') return <RecordPage />;
  if (path === '/sign-ins') return <SignInsPage />;
  if (path === '/kept') return <KeptPage />;
  if (coach !== null) return <CoachPage key={coach.id} id={coach.id} />;
  if (room !== null) return <RoomPage key={room.id} id={room.id} />;
  if (compare !== null) return <ComparePage key={compare.id} id={compare.id} />;
  if (upload !== null) return <UploadPage key={upload.id} id={upload.id} />;
  if (stroke !== null) return <StrokePage key={stroke.id} id={stroke.id} />;
  return null;
}

function Page({ path }: { readonly path: string }) {
  return pageAt(path);
}

/** Pages for whoever is not signed in yet, and for an address without one: null for all others. */
function openPage(path: string) {
  if (path === '/set-up') return <SetUpPage />;
  if (path === '/join') return <JoinPage />;
  if (path === '/reset') return <ResetPage />;
  if (path === '/forgot') return <ForgotPage />;
  const ending = matchPath('/unsubscribe/:token', path);
  if (ending !== null) return <UnsubscribePage token={ending.token} />;
  return pageAt(path) === null ? <MissingPage /> : null;
}

/** The pages stay as they are under the sign-in form, so that a lost session loses nothing typed. */
export function App() {
  // As `matchPath` has it: slashes at its end say nothing.
  const path = usePath().replace(/(?<=[^/])\/+$/, '');
  const session = useSession();
  useLinks();
  const open = openPage(path);
  const asked = session.state === 'out' && open === null;
  useFocusBack(asked);
  return (
    <SessionContext.Provider value={session}>
      <Shell>
        {asked && <SignInPage again={session.person !== null} />}
        {open}
        {open === null && (session.state === 'in' || session.person !== null) && (
          <div hidden={asked}>
            {/* Another person begins with pages of its own. */}
            <Upright key={`${session.person?.id} ${path}`}>
              <Page path={path} />
            </Upright>
          </div>
        )}
      </Shell>
    </SessionContext.Provider>
  );
}
