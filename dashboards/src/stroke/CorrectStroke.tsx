import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { CoachOverview, Direction, Stroke, StrokePatch } from '../api/types.ts';
import { Field } from '../components/sending/Field.tsx';
import { fieldTime, momentOf } from '../fieldTime.ts';
import { InlineForm } from '../forms/InlineForm.tsx';
import { CloseContext } from '../forms/Opens.tsx';
import { SelectField } from '../forms/SelectField.tsx';
import { useForm } from '../forms/useForm.ts';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';

interface CorrectProps {
  readonly stroke: Stroke;
  /** The coach's rooms: a stroke may belong to another of them. */
  readonly rooms: CoachOverview['rooms'];
  readonly onDone: () => void;
}

interface Typed {
  readonly at: string;
  readonly direction: Direction | '';
  readonly roomId: string;
}

function typedOf({ placedAt, roomId, direction, analysis }: Stroke): Typed {
  const found = analysis?.status === 'done' ? analysis.direction : direction;
  return { at: fieldTime(new Date(placedAt)), direction: found ?? '', roomId };
}

/** Only what was changed: a time that was left as it is keeps its seconds, and the logger's clock its say. */
function patchOf(before: Typed, typed: Typed, at: Date | null): StrokePatch {
  const patch: StrokePatch = {};
  if (typed.at !== before.at && at !== null) patch.startedAt = at.toISOString();
  if (typed.direction !== before.direction && typed.direction !== '') patch.direction = typed.direction;
  if (typed.roomId !== before.roomId) patch.roomId = typed.roomId;
  return patch;
}

/** What a logger got wrong of a stroke, for those who may put it right. */
export function CorrectStroke({ stroke, rooms, onDone }: CorrectProps) {
  const say = strokeWords.correct;
  const close = useContext(CloseContext);
  const before = typedOf(stroke);
  const [typed, setTyped] = useState(before);
  const set = (part: Partial<Typed>) => setTyped((held) => ({ ...held, ...part }));
  const at = momentOf(typed.at);
  const isAhead = at !== null && typed.at !== before.at && at.getTime() > Date.now();
  const patch = patchOf(before, typed, at);
  const isSame = Object.keys(patch).length === 0;
  const form = useForm<'at' | 'roomId'>({
    wrong: { at: at === null ? say.atMissing : isAhead ? say.atAhead : null, roomId: null },
    pointers: { at: '/startedAt' },
    send: async () => {
      if (!isSame) await call<Stroke>(`/strokes/${stroke.id}`, { method: 'PATCH', body: patch });
    },
    onSent: () => {
      close();
      if (!isSame) onDone();
    },
  });
  const ways = (['extend', 'retract'] as const).map((way): [Direction | '', string] => [
    way,
    words.directionChoices[way],
  ]);
  return (
    <InlineForm form={form} action={say.save} busy={say.saving}>
      <p class="hint">{say.explain}</p>
      <Field label={say.at} problem={form.problemOf('at')}>
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
      <SelectField
        label={say.direction}
        value={typed.direction}
        options={before.direction === '' ? [['', words.directions.unknown], ...ways] : ways}
        onChange={(direction) => set({ direction })}
      />
      {rooms.length > 1 && (
        <SelectField
          label={say.room}
          value={typed.roomId}
          options={rooms.map(({ id, name }): [string, string] => [id, name])}
          onChange={(roomId) => set({ roomId })}
          problem={form.problemOf('roomId')}
        />
      )}
    </InlineForm>
  );
}
