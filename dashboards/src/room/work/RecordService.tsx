import { useContext, useRef, useState } from 'preact/hooks';
import { call } from '../../api/client.ts';
import type { Room, ServiceKind, ServiceSeen } from '../../api/types.ts';
import { Failure } from '../../components/coming/states.tsx';
import { useFirstProblem } from '../../components/focus/useFirstProblem.ts';
import { untold } from '../../components/sending/untold.ts';
import { useSending } from '../../components/sending/useSending.ts';
import { CloseContext, Opens } from '../../forms/Opens.tsx';
import { words } from '../../words.ts';
import { KINDS_OF_WORK } from './kindsOfWork.ts';
import { BLANK_WORK, bodyOfWork, wrongMoment } from './typedWork.ts';
import { WorkFields } from './WorkFields.tsx';

interface FormProps {
  readonly room: Room;
  readonly onDone: (service: ServiceSeen) => void;
}

/**
 * Records work in two taps: open, and say what was done. It counts as done now on the whole room, unless the fields
 * above the kinds say otherwise.
 */
function ServiceForm({ room, onDone }: FormProps) {
  const say = words.services;
  const close = useContext(CloseContext);
  const [typed, setTyped] = useState(BLANK_WORK);
  const [tries, setTries] = useState(0);
  const [otherwise, setOtherwise] = useState(false);
  const { busy, problem, fieldProblem, forget, send } = useSending();
  const form = useFirstProblem(tries, problem);
  const toSay = untold(problem, ['/at', '/side', '/notes']);
  const wrong = typed.at === '' ? null : wrongMoment(typed.at);

  const record = async (kind: ServiceKind) => {
    setTries(tries + 1);
    if (wrong !== null) {
      // What is wrong can be seen there.
      setOtherwise(true);
      forget();
      return;
    }
    await send(async (idempotencyKey) => {
      const body = bodyOfWork(kind, typed);
      const path = `/rooms/${room.id}/services`;
      const service = await call<ServiceSeen>(path, { method: 'POST', body, idempotencyKey });
      close();
      onDone(service);
    });
  };

  return (
    <form ref={form} class="inline-form" onSubmit={(event) => event.preventDefault()} noValidate>
      {toSay !== null && <Failure problem={toSay} />}
      <details
        open={otherwise || (problem !== null && toSay === null)}
        onToggle={(event) => setOtherwise(event.currentTarget.open)}
      >
        <summary>{say.otherwise}</summary>
        <WorkFields
          room={room}
          typed={typed}
          onInput={(part) => setTyped((held) => ({ ...held, ...part }))}
          atHint={say.atHint}
          problemOf={(field) => (field === 'at' && tries > 0 && wrong) || fieldProblem(`/${field}`)}
        />
      </details>
      <fieldset class="kinds">
        <legend>{say.kind}</legend>
        {KINDS_OF_WORK.map(([kind, text]) => (
          <button key={kind} type="button" aria-disabled={busy} onClick={() => void record(kind)}>
            {text}
          </button>
        ))}
      </fieldset>
    </form>
  );
}

interface SavedProps {
  readonly service: ServiceSeen;
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
      <button type="button" class="quiet" aria-disabled={busy} onClick={() => void undo()}>
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

/** What was saved or taken back is told, and the focus is there once its button is gone. */
export function RecordService({ room, onChange }: RecordProps) {
  const told = useRef<HTMLDivElement>(null);
  const [saved, setSaved] = useState<ServiceSeen | 'undone' | null>(null);
  const [times, setTimes] = useState(0);
  return (
    <>
      <Opens title={words.services.record}>
        <ServiceForm
          key={times}
          room={room}
          onDone={(service) => {
            setTimes(times + 1);
            setSaved(service);
            onChange();
          }}
        />
      </Opens>
      <div ref={told} role="status" class="about" tabIndex={-1}>
        {saved === 'undone' && words.services.undone}
        {saved !== null && saved !== 'undone' && (
          <Saved
            key={saved.id}
            service={saved}
            onUndone={() => {
              setSaved('undone');
              told.current?.focus();
              onChange();
            }}
          />
        )}
      </div>
    </>
  );
}
