import { useState } from 'preact/hooks';
import { call } from '../../api/client.ts';
import type { Room, ServiceSeen } from '../../api/types.ts';
import { InlineForm } from '../../forms/InlineForm.tsx';
import { SelectField } from '../../forms/SelectField.tsx';
import { useForm } from '../../forms/useForm.ts';
import { words } from '../../words.ts';
import { KINDS_OF_WORK } from './kindsOfWork.ts';
import { changeOfWork, type TypedWork, typedWorkOf, wrongMoment } from './typedWork.ts';
import { WorkFields } from './WorkFields.tsx';

interface ChangeWorkProps {
  readonly room: Room;
  readonly work: ServiceSeen;
  readonly onDone: () => void;
}

/** Changes work that was recorded: what it was, when, where, and its notes. */
export function ChangeWork({ room, work, onDone }: ChangeWorkProps) {
  const say = words.services;
  const [kind, setKind] = useState(work.kind);
  const [typed, setTyped] = useState(() => typedWorkOf(work));
  const form = useForm<keyof TypedWork | 'kind'>({
    wrong: { kind: null, at: wrongMoment(typed.at), side: null, notes: null },
    send: async () => {
      await call(`/services/${work.id}`, { method: 'PATCH', body: changeOfWork(work, kind, typed) });
    },
    onSent: onDone,
  });
  return (
    <InlineForm form={form} action={words.forms.save} busy={words.forms.saving}>
      <SelectField
        label={say.kind}
        value={kind}
        options={KINDS_OF_WORK}
        onChange={setKind}
        problem={form.problemOf('kind')}
      />
      <WorkFields
        room={room}
        typed={typed}
        onInput={(part) => setTyped((held) => ({ ...held, ...part }))}
        problemOf={form.problemOf}
      />
    </InlineForm>
  );
}
