import { useContext } from 'preact/hooks';
import type { NoticeSettings } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { Loaded } from '../components/coming/states.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { MailChoice } from '../notices/MailChoice.tsx';
import { Webhooks } from '../notices/Webhooks.tsx';
import { SessionContext } from '../session.ts';
import { noticesWords } from '../words/notices.ts';

/** What the person is told by mail; for dealers also which programs are told. */
export function NoticesPage() {
  const { person } = useContext(SessionContext);
  const load = useLoad<NoticeSettings>('/settings/notices');
  return (
    <section class="narrow">
      <PageTitle text={noticesWords.notices.title} />
      <p class="lead">{noticesWords.notices.lead}</p>
      <Loaded load={load}>{(settings) => <MailChoice settings={settings} />}</Loaded>
      {person?.role === 'dealer' && <Webhooks />}
    </section>
  );
}
