import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Settings } from '../api/types.ts';
import { Failure } from '../components/coming/states.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { Field } from '../components/sending/Field.tsx';
import { untold } from '../components/sending/untold.ts';
import { useSendingInTurn } from '../components/sending/useSending.ts';
import { placeText, plainNumber, temperatureText, whenText } from '../format.ts';
import { SelectField } from '../forms/SelectField.tsx';
import { ZoneOptions } from '../forms/ZoneOptions.tsx';
import { languagesWith } from '../languages.ts';
import { SessionContext } from '../session.ts';
import { keptWords } from '../words/kept.ts';
import { noticesWords } from '../words/notices.ts';
import { peopleWords } from '../words/people.ts';
import { settingsWords } from '../words/settings.ts';
import { words } from '../words.ts';

const FOLLOW = '';

/** Units, time zone and the way of writing numbers and dates, for this person on every device. */
export function SettingsPage() {
  const say = settingsWords;
  const { person, settings, setSettings } = useContext(SessionContext);
  const { busy, problem, fieldProblem, send } = useSendingInTurn();
  const toSay = untold(problem, ['/units', '/locale', '/timeZone']);
  const [saved, setSaved] = useState(false);
  const [zone, setZone] = useState(settings.timeZone ?? FOLLOW);
  const change = (patch: Partial<Settings>) =>
    send(async () => {
      setSettings(await call<Settings>('/settings', { method: 'PATCH', body: patch }));
      setSaved(true);
    });
  return (
    <section class="narrow">
      <PageTitle text={say.title} />
      <p class="lead">{say.lead}</p>
      {toSay !== null && <Failure problem={toSay} />}
      <SelectField
        label={say.units}
        value={settings.units ?? FOLLOW}
        options={[
          [FOLLOW, say.follow],
          ['metric', say.metric],
          ['us', say.us],
        ]}
        onChange={(units) => change({ units: units === FOLLOW ? null : units })}
        problem={fieldProblem('/units')}
      />
      <SelectField
        label={say.locale}
        value={settings.locale ?? FOLLOW}
        options={[[FOLLOW, say.follow], ...languagesWith(settings.locale)]}
        onChange={(locale) => change({ locale: locale === FOLLOW ? null : locale })}
        problem={fieldProblem('/locale')}
      />
      <Field label={say.timeZone} hint={say.timeZoneHint} problem={fieldProblem('/timeZone')}>
        {(ids) => (
          <>
            <input
              {...ids}
              type="text"
              list="zones"
              autocomplete="off"
              spellcheck={false}
              value={zone}
              onInput={(event) => setZone(event.currentTarget.value)}
              onChange={() => change({ timeZone: zone.trim() === '' ? null : zone.trim() })}
            />
            <ZoneOptions id="zones" />
          </>
        )}
      </Field>
      <p role="status" class="about">
        {busy ? say.saving : saved && problem === null ? say.saved : ''}
      </p>
      <section aria-labelledby="sample" class="note">
        <h2 id="sample">{say.sample}</h2>
        <p>
          {[whenText(Date.now()), plainNumber(1234.5), temperatureText(20), placeText(0.37, 0.96)].join(
            words.joint,
          )}
        </p>
      </section>
      <Elsewhere href="/notices" title={noticesWords.notices.title} about={noticesWords.notices.lead} />
      <Elsewhere href="/sign-ins" title={peopleWords.signIns.title} about={peopleWords.signIns.lead} />
      {person?.role === 'dealer' && (
        <Elsewhere href="/kept" title={keptWords.title} about={keptWords.about} />
      )}
    </section>
  );
}

interface ElsewhereProps {
  readonly href: string;
  readonly title: string;
  readonly about: string;
}

/** A page of settings of its own. */
function Elsewhere({ href, title, about }: ElsewhereProps) {
  return (
    <p>
      <a class="alone" href={href}>
        {title}
      </a>
      <span class="told">{about}</span>
    </p>
  );
}
