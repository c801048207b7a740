import { useContext, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { NoticeSettings, NoticeSettingsPatch, Severity } from '../api/types.ts';
import { Failure } from '../components/coming/states.tsx';
import { Tick } from '../components/sending/Tick.tsx';
import { untold } from '../components/sending/untold.ts';
import { useSendingInTurn } from '../components/sending/useSending.ts';
import { SelectField } from '../forms/SelectField.tsx';
import { SessionContext } from '../session.ts';
import { noticesWords } from '../words/notices.ts';
import { PausedMail } from './PausedMail.tsx';
import { QuietHours } from './QuietHours.tsx';
import { SilentDays } from './SilentDays.tsx';

const NONE = 'none';

/** What a person wants to be mailed; each choice is kept as it is made. */
export function MailChoice({ settings: loaded }: { readonly settings: NoticeSettings }) {
  const say = noticesWords.notices;
  const { person } = useContext(SessionContext);
  const [settings, setSettings] = useState(loaded);
  const [saved, setSaved] = useState(false);
  const [half, setHalf] = useState(false);
  const { busy, problem, fieldProblem, send } = useSendingInTurn();
  const toSay = untold(problem, ['/warningsFrom', '/quiet/to']);
  /** As the service said last; what is chosen meanwhile stands over it until that was answered as well. */
  const kept = useRef(loaded);
  const chosen = useRef<NoticeSettingsPatch[]>([]);
  const show = () => setSettings(Object.assign({}, kept.current, ...chosen.current));
  const take = (said: NoticeSettings) => {
    kept.current = said;
    show();
  };
  const change = (patch: NoticeSettingsPatch) => {
    chosen.current.push(patch);
    show();
    return send(async () => {
      try {
        kept.current = await call<NoticeSettings>('/settings/notices', { method: 'PATCH', body: patch });
        setSaved(true);
      } finally {
        chosen.current = chosen.current.filter((each) => each !== patch);
        show();
      }
    });
  };
  return (
    <>
      {!settings.mails && <p class="note">{say.notMailed}</p>}
      {settings.paused !== null && <PausedMail paused={settings.paused} onResumed={take} />}
      {toSay !== null && <Failure problem={toSay} />}
      <SelectField<Severity | typeof NONE>
        label={say.from}
        hint={settings.mails ? say.to(settings.email) : undefined}
        value={settings.warningsFrom ?? NONE}
        options={[
          [NONE, say.none],
          ['watch', say.fromWatch],
          ['service', say.fromService],
          ['stop', say.fromStop],
        ]}
        onChange={(from) => change({ warningsFrom: from === NONE ? null : from })}
        problem={fieldProblem('/warningsFrom')}
      />
      {settings.warningsFrom !== null && (
        <Tick label={say.cleared} on={settings.cleared} onChange={(cleared) => change({ cleared })} />
      )}
      <SilentDays
        days={settings.silentAfterDays}
        onChange={(silentAfterDays) => change({ silentAfterDays })}
      />
      {person?.role === 'dealer' && (
        <Tick label={say.digest} on={settings.digest} onChange={(digest) => change({ digest })} />
      )}
      <QuietHours
        quiet={settings.quiet}
        onChange={(quiet) => change({ quiet })}
        onHalf={setHalf}
        problem={fieldProblem('/quiet/to')}
      />
      <p role="status" class="about">
        {busy ? say.saving : saved && !half && problem === null ? say.saved : ''}
      </p>
    </>
  );
}
