import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Room } from '../api/types.ts';
import { entriesOf } from '../entriesOf.ts';
import { theReader } from '../reader.ts';
import { words } from '../words.ts';
import { InlineForm } from './InlineForm.tsx';
import { CloseContext } from './Opens.tsx';
import {
  blankRoom,
  bodyOfRoom,
  fieldsOfRoom,
  problemsOfRoom,
  type RoomFields,
  usualSides,
} from './roomFields.ts';
import { SelectField } from './SelectField.tsx';
import { TextField } from './TextField.tsx';
import { useForm } from './useForm.ts';

interface RoomFormProps {
  readonly coachId: string;
  /** The room to change; null for a new one. */
  readonly room: Room | null;
  readonly onDone: () => void;
}

// The keys of the words are the drives: the compiler holds them equal wherever a drive is shown.
const DRIVES = entriesOf(words.room.drives);

/** Where the API points when it refuses a field. */
const POINTERS: Partial<Record<keyof RoomFields, string>> = { travel: '/travelMetres' };

/** Makes a room, or changes one. What few people know stands behind a fold. */
export function RoomForm({ coachId, room, onDone }: RoomFormProps) {
  const say = words.forms;
  const close = useContext(CloseContext);
  const [typed, setTyped] = useState<RoomFields>(room === null ? blankRoom : fieldsOfRoom(room));
  const set = (part: Partial<RoomFields>) => setTyped((held) => ({ ...held, ...part }));
  const setDrive = (drive: Room['drive']) =>
    // The sides follow the drive until somebody names them.
    set(typed.sides === usualSides(typed.drive) ? { drive, sides: usualSides(drive) } : { drive });
  const form = useForm<keyof RoomFields>({
    wrong: problemsOfRoom(typed),
    pointers: POINTERS,
    send: async (idempotencyKey) => {
      const body = bodyOfRoom(typed, room);
      if (room === null) await call(`/coaches/${coachId}/rooms`, { method: 'POST', body, idempotencyKey });
      else await call(`/rooms/${room.id}`, { method: 'PATCH', body });
    },
    onSent: () => {
      if (room === null) setTyped(blankRoom);
      close();
      onDone();
    },
  });
  const { problemOf } = form;
  const numberField = (
    name: 'travel' | 'ratedAmps' | 'gearTeeth' | 'rackPitchMm' | 'nominalVolts',
    label: string,
    hint?: string,
  ) => (
    <TextField
      label={label}
      hint={hint}
      inputMode="decimal"
      value={typed[name]}
      onInput={(value) => set({ [name]: value })}
      problem={problemOf(name)}
    />
  );
  return (
    <InlineForm form={form} action={room === null ? say.addRoom : say.save} busy={say.saving}>
      <TextField
        label={say.roomName}
        value={typed.name}
        onInput={(name) => set({ name })}
        maxLength={300}
        problem={problemOf('name')}
      />
      <SelectField
        label={say.drive}
        value={typed.drive}
        options={DRIVES}
        onChange={setDrive}
        problem={problemOf('drive')}
      />
      <TextField
        label={say.sides}
        hint={say.sidesHint}
        value={typed.sides}
        onInput={(sides) => set({ sides })}
        problem={problemOf('sides')}
      />
      {numberField('travel', theReader().us ? say.travelInches : say.travelCentimetres, say.travelHint)}
      {numberField('ratedAmps', say.ratedAmps, say.ratedAmpsHint)}
      <details
        open={
          (problemOf('gearTeeth') ?? problemOf('rackPitchMm') ?? problemOf('nominalVolts')) !== null
            ? true
            : undefined
        }
      >
        <summary>{say.moreOfRoom}</summary>
        <p class="cautions">{say.moreOfRoomBefore}</p>
        {numberField('gearTeeth', say.gearTeeth)}
        {numberField('rackPitchMm', say.rackPitch)}
        {numberField('nominalVolts', say.nominalVolts)}
      </details>
      {room !== null && <p class="hint">{say.madeAnew}</p>}
    </InlineForm>
  );
}
