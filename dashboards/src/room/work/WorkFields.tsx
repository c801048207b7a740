import type { Room } from '../../api/types.ts';
import { Field } from '../../components/sending/Field.tsx';
import { fieldTime } from '../../fieldTime.ts';
import { SelectField } from '../../forms/SelectField.tsx';
import { TextField } from '../../forms/TextField.tsx';
import { words } from '../../words.ts';
import type { TypedWork } from './typedWork.ts';

interface WorkFieldsProps {
  readonly room: Room;
  readonly typed: TypedWork;
  readonly onInput: (part: Partial<TypedWork>) => void;
  readonly atHint?: string;
  readonly problemOf: (field: keyof TypedWork) => string | null;
}

/** When work was done, on which side, and what there is to say of it. */
export function WorkFields({ room, typed, onInput, atHint, problemOf }: WorkFieldsProps) {
  const say = words.services;
  const sides =
    typed.side === '' || room.sides.includes(typed.side) ? room.sides : [...room.sides, typed.side];
  return (
    <>
      <Field label={say.at} hint={atHint} problem={problemOf('at')}>
        {(ids) => (
          <input
            {...ids}
            type="datetime-local"
            value={typed.at}
            max={fieldTime(new Date())}
            onInput={(event) => onInput({ at: event.currentTarget.value })}
          />
        )}
      </Field>
      {sides.length > 1 && (
        <SelectField
          label={say.side}
          value={typed.side}
          options={[['', say.whole], ...sides.map((side): [string, string] => [side, side])]}
          onChange={(side) => onInput({ side })}
          problem={problemOf('side')}
        />
      )}
      <TextField
        label={say.notes}
        lines={2}
        maxLength={10_000}
        value={typed.notes}
        onInput={(notes) => onInput({ notes })}
        problem={problemOf('notes')}
      />
    </>
  );
}
