import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Room, Service, ServiceBody, ServiceKind } from '../api/types.ts';
import { Field } from '../components/Field.tsx';
import { Failure } from '../components/states.tsx';
import { useSending } from '../components/useSending.ts';
import { fieldTime, momentOf } from '../fieldTime.ts';
import { SelectField } from '../forms/SelectField.tsx';
import { TextField } from '../forms/TextField.tsx';
import { words } from '../words.ts';

// The keys of the words are the kinds: the compiler holds them equal wherever a kind is shown.
const KINDS = Object.keys(words.services.kinds) as ServiceKind[];

interface Typed {
  /** As the field holds it: local time without a zone. Empty: now, whenever that is sent. */
  readonly at: string;
  /** Empty: the whole room. */
  readonly side: string;
  readonly notes: string;
}

const BLANK: Typed = { at: '', side: '', notes: '' };

function bodyOf(kind: ServiceKind, typed: Typed, at: Date): ServiceBody {
  const body: ServiceBody = { kind, at: at.toISOString() };
  if (typed.side !== '') body.side = typed.side;
  if (typed.notes.trim() !== '') body.notes = typed.notes.trim();
  return body;
}

interface FormProps {
  readonly room: Room;
  readonly onDone: (service: Service) => void;
}

/**
 * Records work in two taps: open, and say what was done. It counts as done now on the whole room, unless the fields
 * above the kinds say otherwise.
 */
function ServiceForm({ room, onDone }: FormProps) {
  const say = words.services;
  const [typed, setTyped] = useState(BLANK);
  const { busy, problem, fieldProblem, send } = useSending();
  const at = typed.at === '' ? new Date() : momentOf(typed.at);
  const set = (part: Partial<Typed>) => setTyped((held) => ({ ...held, ...part }));

  const record = async (kind: ServiceKind) => {
    if (at === null) return;
    await send(async (idempotencyKey) => {
      const body = bodyOf(kind, typed, at);
      onDone(await call<Service>(`/rooms/${room.id}/services`, { method: 'POST', body, idempotencyKey }));
    });
  };

  return (
    <form class="inline-form" onSubmit={(event) => event.preventDefault()} noValidate>
      {problem !== null && <Failure problem={problem} />}
      <details>
        <summary>{say.otherwise}</summary>
        <Field label={say.at} hint={say.atHint} problem={at === null ? say.atMissing : fieldProblem('/at')}>
          {(ids) => (
            <input
              {...ids}
              type="datetime-local"
              value={typed.at}
              max={fieldTime(new Date())}
              onInput={(event) => set({ at: event.currentTarget.value })}
            />
          )}
        </Field>
        {room.sides.length > 1 && (
          <SelectField
            label={say.side}
            value={typed.side}
            options={[['', say.whole], ...room.sides.map((side): [string, string] => [side, side])]}
            onChange={(side) => set({ side })}
            problem={fieldProblem('/side')}
          />
        )}
        <TextField
          label={say.notes}
          lines={2}
          maxLength={10_000}
          value={typed.notes}
          onInput={(notes) => set({ notes })}
          problem={fieldProblem('/notes')}
        />
      </details>
      <fieldset class="kinds">
        <legend>{say.kind}</legend>
        {KINDS.map((kind) => (
          <button key={kind} type="button" disabled={busy} onClick={() => void record(kind)}>
            {say.kinds[kind]}
          </button>
        ))}
      </fieldset>
    </form>
  );
}

interface SavedProps {
  readonly service: Service;
  readonly onUndone: () => void;
}

/** What was just saved, and the way back: two taps are quick to be the wrong ones. */
function Saved({ service, onUndone }: SavedProps) {
  const say = words.services;
  const { busy, problem, send } = useSending();
  const undo = () =>
    send(async () => {
      await call(`/services/${service.id}`, { method: 'DELETE' });
      onUndone();
    });
  return (
    <>
      {say.saved(say.kinds[service.kind])}{' '}
      <button type="button" class="quiet" disabled={busy} onClick={() => void undo()}>
        {say.undo}
      </button>
      {problem !== null && <Failure problem={problem} />}
    </>
  );
}

interface RecordProps {
  readonly room: Room;
  readonly onChange: () => void;
}

/** The form opens on demand; what was typed stays when it is closed and opened again. */
export function RecordService({ room, onChange }: RecordProps) {
  const [opened, setOpened] = useState(false);
  const [saved, setSaved] = useState<Service | 'undone' | null>(null);
  const [times, setTimes] = useState(0);
  return (
    <>
      <details class="opens" open={opened} onToggle={(event) => setOpened(event.currentTarget.open)}>
        <summary>{words.services.record}</summary>
        <ServiceForm
          key={times}
          room={room}
          onDone={(service) => {
            setTimes(times + 1);
            setSaved(service);
            setOpened(false);
            onChange();
          }}
        />
      </details>
      <div role="status" class="about">
        {saved === 'undone' && words.services.undone}
        {saved !== null && saved !== 'undone' && (
          <Saved
            key={saved.id}
            service={saved}
            onUndone={() => {
              setSaved('undone');
              onChange();
            }}
          />
        )}
      </div>
    </>
  );
}
