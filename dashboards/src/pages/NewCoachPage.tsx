import { PageTitle } from '../components/frame/PageTitle.tsx';
import { Trail } from '../components/frame/Trail.tsx';
import { CoachForm } from '../forms/CoachForm.tsx';
import { navigate } from '../router.ts';
import { words } from '../words.ts';

/** Registers a coach; its rooms and loggers are added on its own page. */
export function NewCoachPage() {
  return (
    <section class="narrow">
      <Trail steps={[{ href: '/', text: words.nav.coaches }]} here="" />
      <PageTitle text={words.forms.addCoach} />
      <CoachForm coach={null} onDone={(coach) => navigate(`/coaches/${coach.id}`)} />
    </section>
  );
}
