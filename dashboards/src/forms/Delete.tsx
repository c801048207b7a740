import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import { Failure } from '../components/states.tsx';
import { useSending } from '../components/useSending.ts';
import { words } from '../words.ts';
import { CloseContext } from './Opens.tsx';
import { TextField } from './TextField.tsx';

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
  const [tried, setTried] = useState(false);
  const { busy, problem, send } = useSending();
  const fits = sameText(typed, name);
  const submit = async (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (!fits) return;
    if (await send(async () => call(path, { method: 'DELETE' }))) {
      close();
      onDone();
    }
  };
  return (
    <form class="inline-form" onSubmit={submit} noValidate>
      <p>{means}</p>
      {problem !== null && <Failure problem={problem} />}
      <TextField
        label={say.typeName(name)}
        value={typed}
        onInput={setTyped}
        problem={tried && !fits ? say.nameDiffers : null}
      />
      <button type="submit" class="danger" aria-disabled={busy}>
        {busy ? say.deleting : say.deleteIt}
      </button>
    </form>
  );
}
