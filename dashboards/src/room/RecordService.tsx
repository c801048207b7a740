import { useRef, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Room, ServiceBody, ServiceKind } from '../api/types.ts';
import { Field } from '../components/Field.tsx';
import { Failure } from '../components/states.tsx';
import { useSending } from '../components/useSending.ts';
import { localFieldTime } from '../format.ts';
import { words } from '../words.ts';

// The keys of the words are the kinds: the compiler holds them equal wherever a kind is shown.
const KINDS = Object.keys(words.services.kinds) as ServiceKind[];

interface Typed {
  readonly kind: ServiceKind;
  /** As the field holds it: local time without a zone. */
  readonly at: string;
  /** Empty: the whole room. */
  readonly side: string;
  readonly notes: string;
}

const blank = (): Typed => ({ kind: 'lubricated', at: localFieldTime(new Date()), side: '', notes: '' });

function bodyOf(typed: Typed): ServiceBody {
  const body: ServiceBody = { kind: typed.kind, at: new Date(typed.at).toISOString() };
  if (typed.side !== '') body.side = typed.side;
  if (typed.notes.trim() !== '') body.notes = typed.notes.trim();
  return body;
}

interface FormProps {
  readonly room: Room;
  readonly onDone: () => void;
}

function ServiceForm({ room, onDone }: FormProps) {
  const say = words.services;
  const [typed, setTyped] = useState(blank);
  const { busy, problem, fieldProblem, send } = useSending();
  const badTime = Number.isNaN(Date.parse(typed.at));
  const set = (part: Partial<Typed>) => setTyped((held) => ({ ...held, ...part }));

  const submit = async (event: Event) => {
    event.preventDefault();
    if (badTime) return;
    const done = await send(async (idempotencyKey) => {
      await call(`/rooms/${room.id}/services`, { method: 'POST', body: bodyOf(typed), idempotencyKey });
    });
    if (done) onDone();
  };

  return (
    <form class="inline-form" onSubmit={submit} noValidate>
      {problem !== null && <Failure problem={problem} />}
      <Field label={say.kind} problem={fieldProblem('/kind')}>
        {(ids) => (
          // The options are the kinds themselves.
          <select
            {...ids}
            value={typed.kind}
            onChange={(e) => set({ kind: e.currentTarget.value as ServiceKind })}
          >
            {KINDS.map((kind) => (
              <option key={kind} value={kind}>
                {say.kinds[kind]}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field label={say.at} problem={badTime ? say.atMissing : fieldProblem('/at')}>
        {(ids) => (
          <input
            {...ids}
            type="datetime-local"
            value={typed.at}
            onInput={(event) => set({ at: event.currentTarget.value })}
          />
        )}
      </Field>
      {room.sides.length > 1 && (
        <Field label={say.side} problem={fieldProblem('/side')}>
          {(ids) => (
            <select
              {...ids}
              value={typed.side}
              onChange={(event) => set({ side: event.currentTarget.value })}
            >
              <option value="">{say.whole}</option>
              {room.sides.map((side) => (
                <option key={side} value={side}>
                  {side}
                </option>
              ))}
            </select>
          )}
        </Field>
      )}
      <Field label={say.notes} problem={fieldProblem('/notes')}>
        {(ids) => (
          <textarea
            {...ids}
            rows={2}
            maxLength={10_000}
            value={typed.notes}
            onInput={(event) => set({ notes: event.currentTarget.value })}
          />
        )}
      </Field>
      <button type="submit" class="main-action" disabled={busy}>
        {busy ? say.saving : say.save}
      </button>
    </form>
  );
}

/** The form opens on demand; what was typed stays when it is closed and opened again. */
export function RecordService({ room, onDone }: FormProps) {
  const [opened, setOpened] = useState(false);
  const [saved, setSaved] = useState(0);
  const opener = useRef<HTMLElement>(null);
  return (
    <>
      <details class="record" open={opened} onToggle={(event) => setOpened(event.currentTarget.open)}>
        <summary ref={opener}>{words.services.record}</summary>
        <ServiceForm
          key={saved}
          room={room}
          onDone={() => {
            setSaved((n) => n + 1);
            setOpened(false);
            opener.current?.focus();
            onDone();
          }}
        />
      </details>
      <p role="status" class="about">
        {saved > 0 && words.services.saved}
      </p>
    </>
  );
}
