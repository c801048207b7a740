import { useContext, useState } from 'preact/hooks';
import type { NoticeSettings } from '../api/types.ts';
import { Field } from '../components/Field.tsx';
import { SessionContext } from '../session.ts';
import { words } from '../words.ts';

type Quiet = NoticeSettings['quiet'];

interface QuietHoursProps {
  readonly quiet: Quiet;
  readonly onChange: (quiet: Quiet) => void;
  readonly problem: string | null;
}

/** From a time of day to another; kept once both are there. */
export function QuietHours({ quiet, onChange, problem }: QuietHoursProps) {
  const say = words.notices;
  const { timeZone } = useContext(SessionContext).settings;
  const [from, setFrom] = useState(quiet?.from ?? '');
  const [to, setTo] = useState(quiet?.to ?? '');
  const keep = () => {
    if (from !== '' && to !== '' && (from !== quiet?.from || to !== quiet?.to)) onChange({ from, to });
  };
  const clear = () => {
    setFrom('');
    setTo('');
    onChange(null);
  };
  const time = (label: string, value: string, set: (time: string) => void, wrong: string | null) => (
    <Field label={label} problem={wrong}>
      {(ids) => (
        <input
          {...ids}
          type="time"
          value={value}
          onInput={(event) => set(event.currentTarget.value)}
          onBlur={keep}
        />
      )}
    </Field>
  );
  return (
    <fieldset class="quiet-hours">
      <legend>{say.quiet}</legend>
      <p class="hint">
        {say.quietAbout} {timeZone === null ? say.noZone : say.inZone(timeZone)}{' '}
        {timeZone === null && <a href="/settings">{say.setZone}</a>}
      </p>
      {time(say.quietFrom, from, setFrom, null)}
      {time(say.quietTo, to, setTo, problem)}
      {quiet !== null && (
        <button type="button" onClick={clear}>
          {say.noQuiet}
        </button>
      )}
    </fieldset>
  );
}
