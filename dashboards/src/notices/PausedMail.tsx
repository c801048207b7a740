import { call } from '../api/client.ts';
import type { NoticeSettings } from '../api/types.ts';
import { Failure } from '../components/coming/states.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { whenText } from '../format.ts';
import { noticesWords } from '../words/notices.ts';

interface PausedMailProps {
  readonly paused: NonNullable<NoticeSettings['paused']>;
  readonly onResumed: (settings: NoticeSettings) => void;
}

/** Says that the mailbox was refused, and goes on once its owner has mended it. */
export function PausedMail({ paused, onResumed }: PausedMailProps) {
  const say = noticesWords.notices;
  const { busy, problem, send } = useSending();
  const resume = () =>
    send(async () => {
      onResumed(await call<NoticeSettings>('/settings/notices/resumption', { method: 'POST' }));
    });
  return (
    <section class="note" aria-label={say.paused(whenText(paused.since))}>
      <p>
        {say.paused(whenText(paused.since))} {paused.because}
      </p>
      {problem !== null && <Failure problem={problem} />}
      <button type="button" aria-disabled={busy} onClick={resume}>
        {busy ? say.resuming : say.resume}
      </button>
    </section>
  );
}
