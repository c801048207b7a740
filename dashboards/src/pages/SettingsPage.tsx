import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Settings } from '../api/types.ts';
import { Field } from '../components/Field.tsx';
import { PageTitle } from '../components/PageTitle.tsx';
import { Failure } from '../components/states.tsx';
import { useSendingInTurn } from '../components/useSending.ts';
import { placeText, plainNumber, temperatureText, whenText } from '../format.ts';
import { SelectField } from '../forms/SelectField.tsx';
import { SessionContext } from '../session.ts';
import { words } from '../words.ts';

const FOLLOW = '';

/** Languages whose numbers and dates differ enough to be chosen; any other tag can be set over the API. */
const LOCALES = [
  'en-US',
  'en-GB',
  'en-CA',
  'en-AU',
  'de-DE',
  'es-ES',
  'es-US',
  'fr-CA',
  'fr-FR',
  'nl-NL',
  'sv-SE',
  'he-IL',
  'ar-EG',
];

/** As a language calls itself. */
function localeName(tag: string): string {
  return new Intl.DisplayNames([tag], { type: 'language' }).of(tag) ?? tag;
}

/** The zones that the browser knows, and the one that is set. */
function zones(set: string | null): string[] {
  const known = Intl.supportedValuesOf('timeZone');
  return set === null || known.includes(set) ? known : [set, ...known];
}

/** Units, time zone and the way of writing numbers and dates, for this person on every device. */
export function SettingsPage() {
  const say = words.settings;
  const { settings, setSettings } = useContext(SessionContext);
  const { busy, problem, fieldProblem, send } = useSendingInTurn();
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
      {problem !== null && <Failure problem={problem} />}
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
        options={[
          [FOLLOW, say.follow],
          ...[...new Set([...LOCALES, ...(settings.locale === null ? [] : [settings.locale])])].map(
            (tag): [string, string] => [tag, localeName(tag)],
          ),
        ]}
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
            <datalist id="zones">
              {zones(settings.timeZone).map((name) => (
                <option key={name} value={name} />
              ))}
            </datalist>
          </>
        )}
      </Field>
      <p role="status" class="about">
        {busy ? say.saving : saved ? say.saved : ''}
      </p>
      <p>
        <a href="/notices">{words.notices.title}</a>
        {words.joint}
        {words.notices.lead}
      </p>
      <p>
        <a href="/sign-ins">{words.signIns.title}</a>
        {words.joint}
        {words.signIns.lead}
      </p>
      <section aria-labelledby="sample" class="note">
        <h2 id="sample">{say.sample}</h2>
        <p>
          {[whenText(Date.now()), plainNumber(1234.5), temperatureText(20), placeText(0.37, 0.96)].join(
            words.joint,
          )}
        </p>
      </section>
    </section>
  );
}
