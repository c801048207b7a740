import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import { Failure } from '../components/coming/states.tsx';
import { words } from '../words.ts';
import { CloseContext } from './Opens.tsx';
import { TextField } from './TextField.tsx';
import { useForm } from './useForm.ts';

interface DeleteProps {
  /** Of the API, such as `/coaches/…`. */
  readonly path: string;
  readonly name: string;
  /** What goes with it. */
  readonly means: string;
  readonly onDone: () => void;
}

const sameText = (a: string, b: string): boolean =>
  a.trim().normalize('NFC').replace(/\s+/g, ' ') === b.trim().normalize('NFC').replace(/\s+/g, ' ');

/** Deletes a thing once its name was typed: nobody does that by a slip of the finger. */
export function Delete({ path, name, means, onDone }: DeleteProps) {
  const say = words.forms;
  const close = useContext(CloseContext);
  const [typed, setTyped] = useState('');
  const form = useForm<'name'>({
    wrong: { name: sameText(typed, name) ? null : say.nameDiffers },
    send: () => call(path, { method: 'DELETE' }),
    onSent: () => {
      close();
      onDone();
    },
  });
  return (
    <form ref={form.ref} class="inline-form" onSubmit={form.onSubmit} noValidate>
      <p>{means}</p>
      {form.problem !== null && <Failure problem={form.problem} />}
      <TextField
        label={say.typeName(name)}
        value={typed}
        onInput={setTyped}
        problem={form.problemOf('name')}
      />
      <button type="submit" class="danger" aria-disabled={form.busy}>
        {form.busy ? say.deleting : say.deleteIt}
      </button>
    </form>
  );
}
