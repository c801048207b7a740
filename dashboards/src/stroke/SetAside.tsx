import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Stroke, StrokePatch } from '../api/types.ts';
import { Failure } from '../components/coming/states.tsx';
import { Field } from '../components/sending/Field.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { strokeWords } from '../words/stroke.ts';

/** Keeps a stroke out of the normal and the findings, or takes it back in. */
export function SetAside({ stroke, onDone }: { readonly stroke: Stroke; readonly onDone: () => void }) {
  const say = strokeWords.setAside;
  const [note, setNote] = useState(stroke.note ?? '');
  const { busy, problem, send } = useSending();

  const submit = async (event: Event) => {
    event.preventDefault();
    const body: StrokePatch = { excluded: !stroke.excluded, note: note.trim() === '' ? null : note.trim() };
    const done = await send(async () => {
      await call<Stroke>(`/strokes/${stroke.id}`, { method: 'PATCH', body });
    });
    if (done) onDone();
  };

  return (
    <section class="no-print" aria-labelledby="set-aside">
      <h2 id="set-aside">{say.title}</h2>
      <p class="about">{stroke.excluded ? say.isAside : say.explain}</p>
      <form class="inline-form" onSubmit={submit}>
        {problem !== null && <Failure problem={problem} />}
        <Field label={say.note}>
          {(ids) => (
            <input
              {...ids}
              type="text"
              maxLength={10_000}
              dir="auto"
              value={note}
              onInput={(event) => setNote(event.currentTarget.value)}
            />
          )}
        </Field>
        <button type="submit" aria-disabled={busy}>
          {busy ? say.saving : stroke.excluded ? say.undo : say.do}
        </button>
      </form>
    </section>
  );
}
