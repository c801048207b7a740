import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { call } from '../../api/client.ts';
import type { Room, ServiceSeen } from '../../api/types.ts';
import { Failure } from '../../components/coming/states.tsx';
import { useSending } from '../../components/sending/useSending.ts';
import { dayText } from '../../format.ts';
import { words } from '../../words.ts';
import { ChangeWork } from './ChangeWork.tsx';

interface WorkToolsProps {
  readonly room: Room;
  readonly work: ServiceSeen;
  readonly onChange: () => void;
}

/** The quiet ways to change and to remove recorded work, for whoever may; it is removed once that was said twice. */
export function WorkTools({ room, work, onChange }: WorkToolsProps) {
  const say = words.services;
  const [opened, setOpened] = useState<'change' | 'remove' | null>(null);
  const named = (what: string) => say.toolOf(what, say.kinds[work.kind], dayText(work.at));
  const openers = { change: useRef<HTMLButtonElement>(null), remove: useRef<HTMLButtonElement>(null) };
  const opener = (which: 'change' | 'remove', text: string) => (
    <button
      ref={openers[which]}
      type="button"
      class="quiet"
      aria-expanded={opened === which}
      aria-label={named(text)}
      onClick={() => setOpened(opened === which ? null : which)}
    >
      {text}
    </button>
  );
  const close = (which: 'change' | 'remove') => {
    setOpened(null);
    openers[which].current?.focus();
  };
  const done = (which: 'change' | 'remove') => {
    close(which);
    onChange();
  };
  return (
    <>
      <div class="work-tools">
        {opener('change', say.change)}
        {opener('remove', say.remove)}
      </div>
      {opened === 'change' && <ChangeWork room={room} work={work} onDone={() => done('change')} />}
      {opened === 'remove' && (
        <RemoveWork work={work} onDone={() => done('remove')} onKept={() => close('remove')} />
      )}
    </>
  );
}

interface RemoveWorkProps {
  readonly work: ServiceSeen;
  readonly onDone: () => void;
  readonly onKept: () => void;
}

function RemoveWork({ work, onDone, onKept }: RemoveWorkProps) {
  const say = words.services;
  const { busy, problem, send } = useSending();
  const asked = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => asked.current?.focus(), []);
  const remove = async () => {
    if (await send(async () => call(`/services/${work.id}`, { method: 'DELETE' }))) onDone();
  };
  return (
    <div class="inline-form">
      <p>{say.removeMeans}</p>
      {problem !== null && <Failure problem={problem} />}
      <div class="actions">
        <button ref={asked} type="button" class="danger" aria-disabled={busy} onClick={() => void remove()}>
          {busy ? say.removing : say.removeIt}
        </button>
        <button type="button" onClick={onKept}>
          {say.keepIt}
        </button>
      </div>
    </div>
  );
}
