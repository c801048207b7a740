import { useContext, useState } from 'preact/hooks';
import type { NoticeSettings } from '../api/types.ts';
import { Field } from '../components/sending/Field.tsx';
import { SessionContext } from '../session.ts';
import { noticesWords } from '../words/notices.ts';

type Quiet = NoticeSettings['quiet'];

interface QuietHoursProps {
  readonly quiet: Quiet;
  readonly onChange: (quiet: Quiet) => void;
  /** Only one of the two is there yet, so that nothing was kept. */
  readonly onHalf: (half: boolean) => void;
  readonly problem: string | null;
}

/** From a time of day to another; kept once both are there. */
export function QuietHours({ quiet, onChange, onHalf, problem }: QuietHoursProps) {
  const say = noticesWords.notices;
  const { timeZone } = useContext(SessionContext).settings;
  const [from, setFrom] = useState(quiet?.from ?? '');
  const [to, setTo] = useState(quiet?.to ?? '');
  const [left, setLeft] = useState(false);
  const leave = (event: FocusEvent & { currentTarget: HTMLElement }) => {
    // From one of the two to the other is within.
    if (event.relatedTarget instanceof Node && event.currentTarget.contains(event.relatedTarget)) return;
    setLeft(true);
    onHalf((from === '') !== (to === ''));
  };
  const missing = (time: string) => (left && time === '' && from !== to ? say.quietBoth : null);
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
    <fieldset class="quiet-hours" onFocusOut={leave}>
      <legend>{say.quiet}</legend>
      <p class="hint">
        {say.quietAbout} {timeZone === null ? say.noZone : say.inZone(timeZone)}{' '}
        {timeZone === null && <a href="/settings">{say.setZone}</a>}
      </p>
      {time(say.quietFrom, from, setFrom, missing(from))}
      {time(say.quietTo, to, setTo, missing(to) ?? problem)}
      {quiet !== null && (
        <button type="button" onClick={clear}>
          {say.noQuiet}
        </button>
      )}
    </fieldset>
  );
}
