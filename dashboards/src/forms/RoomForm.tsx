import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Room } from '../api/types.ts';
import { Failure } from '../components/states.tsx';
import { useFirstProblem } from '../components/useFirstProblem.ts';
import { useSending } from '../components/useSending.ts';
import { theReader } from '../reader.ts';
import { words } from '../words.ts';
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

interface RoomFormProps {
  readonly coachId: string;
  /** The room to change; null for a new one. */
  readonly room: Room | null;
  readonly onDone: () => void;
}

// The keys of the words are the drives: the compiler holds them equal wherever a drive is shown.
const DRIVES = Object.entries(words.room.drives) as [Room['drive'], string][];

/** Where the API points when it refuses a field. */
const POINTERS: Partial<Record<keyof RoomFields, string>> = { travel: '/travelMetres' };

/** Makes a room, or changes one. What few people know stands behind a fold. */
export function RoomForm({ coachId, room, onDone }: RoomFormProps) {
  const say = words.forms;
  const close = useContext(CloseContext);
  const [typed, setTyped] = useState<RoomFields>(room === null ? blankRoom : fieldsOfRoom(room));
  const [tries, setTries] = useState(0);
  const form = useFirstProblem(tries);
  const { busy, problem, fieldProblem, send } = useSending();
  const wrong = problemsOfRoom(typed);
  const set = (part: Partial<RoomFields>) => setTyped((held) => ({ ...held, ...part }));
  const setDrive = (drive: Room['drive']) =>
    // The sides follow the drive until somebody names them.
    set(typed.sides === usualSides(typed.drive) ? { drive, sides: usualSides(drive) } : { drive });
  const submit = async (event: Event) => {
    event.preventDefault();
    setTries(tries + 1);
    if (Object.keys(wrong).length > 0) return;
    const body = bodyOfRoom(typed, room);
    const sent = await send(async (idempotencyKey) => {
      if (room === null) await call(`/coaches/${coachId}/rooms`, { method: 'POST', body, idempotencyKey });
      else await call(`/rooms/${room.id}`, { method: 'PATCH', body });
    });
    if (!sent) return;
    if (room === null) setTyped(blankRoom);
    setTries(0);
    close();
    onDone();
  };
  const problemOf = (name: keyof RoomFields) =>
    (tries > 0 && wrong[name]) || fieldProblem(POINTERS[name] ?? `/${name}`);
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
    <form ref={form} class="inline-form" onSubmit={submit} noValidate>
      {problem !== null && <Failure problem={problem} />}
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
          tries > 0 &&
          (problemOf('gearTeeth') ?? problemOf('rackPitchMm') ?? problemOf('nominalVolts')) !== null
            ? true
            : undefined
        }
      >
        <summary>{say.moreOfRoom}</summary>
        {numberField('gearTeeth', say.gearTeeth)}
        {numberField('rackPitchMm', say.rackPitch)}
        {numberField('nominalVolts', say.nominalVolts)}
      </details>
      {room !== null && <p class="hint">{say.madeAnew}</p>}
      <button type="submit" class="main-action" disabled={busy}>
        {busy ? say.saving : room === null ? say.addRoom : say.save}
      </button>
    </form>
  );
}
