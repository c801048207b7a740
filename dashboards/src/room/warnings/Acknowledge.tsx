import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { call } from '../../api/client.ts';
import type { Warning } from '../../api/types.ts';
import { Failure } from '../../components/coming/states.tsx';
import { Field } from '../../components/sending/Field.tsx';
import { useSending } from '../../components/sending/useSending.ts';
import { toldHere } from '../../format.ts';
import { words } from '../../words.ts';

/** Says that somebody has seen a warning, with a note if they like. */
export function Acknowledge({ warning, onDone }: { readonly warning: Warning; readonly onDone: () => void }) {
  const [asking, setAsking] = useState(false);
  const [note, setNote] = useState('');
  const { busy, problem, send } = useSending();
  const noteField = useRef<HTMLInputElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const wasAsked = useRef(false);
  // Whoever thinks better of it is where it began.
  useLayoutEffect(() => {
    if (asking) noteField.current?.focus();
    else if (wasAsked.current) opener.current?.focus();
    wasAsked.current = asking;
  }, [asking]);

  const submit = async (event: Event) => {
    event.preventDefault();
    const done = await send(async (idempotencyKey) => {
      const body = note.trim() === '' ? {} : { note: note.trim() };
      await call(`/warnings/${warning.id}/acknowledgement`, { method: 'POST', body, idempotencyKey });
    });
    if (done) onDone();
  };

  if (!asking) {
    return (
      <button
        ref={opener}
        type="button"
        aria-label={words.warnings.acknowledgeTitle(toldHere(warning.headline))}
        onClick={() => setAsking(true)}
      >
        {words.warnings.acknowledge}
      </button>
    );
  }
  return (
    <form class="inline-form" onSubmit={submit}>
      {problem !== null && <Failure problem={problem} />}
      <Field label={words.warnings.note}>
        {(ids) => (
          <input
            {...ids}
            ref={noteField}
            type="text"
            dir="auto"
            maxLength={10_000}
            value={note}
            onInput={(event) => setNote(event.currentTarget.value)}
          />
        )}
      </Field>
      <div class="actions">
        <button type="submit" class="main-action" aria-disabled={busy}>
          {busy ? words.warnings.saving : words.warnings.save}
        </button>
        <button type="button" onClick={() => setAsking(false)}>
          {words.warnings.cancel}
        </button>
      </div>
    </form>
  );
}
