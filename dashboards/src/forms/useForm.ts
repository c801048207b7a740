import type { RefObject } from 'preact';
import { useState } from 'preact/hooks';
import type { CallProblem } from '../api/client.ts';
import { useFirstProblem } from '../components/focus/useFirstProblem.ts';
import { untold } from '../components/sending/untold.ts';
import { useSending } from '../components/sending/useSending.ts';

interface FormParts<Field extends string> {
  /** What is wrong with each field that says so beside itself; told once somebody tried to send it. */
  readonly wrong: Readonly<Record<Field, string | null>>;
  /** Where the service points at a field that has another name there. */
  readonly pointers?: Readonly<Partial<Record<Field, string>>>;
  readonly send: (idempotencyKey: string) => Promise<void>;
  /** Once it was taken: empties fields, closes. */
  readonly onSent?: () => void;
}

/** What a form shows of itself. */
export interface FormState<Field extends string = never> {
  readonly ref: RefObject<HTMLFormElement | null>;
  readonly busy: boolean;
  /** What no field says of itself. */
  readonly problem: CallProblem | null;
  /** Of one field: what we know ourselves, else what the service said of it. */
  readonly problemOf: (field: Field) => string | null;
  readonly onSubmit: (event: Event) => Promise<void>;
}

/** A form is sent whole and once at a time, keeps what was typed until it is taken, and leads to the first field at fault. */
export function useForm<Field extends string>(parts: FormParts<Field>): FormState<Field> {
  const { wrong, pointers, send, onSent } = parts;
  const [tries, setTries] = useState(0);
  const sending = useSending();
  const ref = useFirstProblem(tries, sending.problem);
  const pointerOf = (field: Field) => pointers?.[field] ?? `/${field}`;
  return {
    ref,
    busy: sending.busy,
    // The keys of a record of fields are fields.
    problem: untold(sending.problem, (Object.keys(wrong) as Field[]).map(pointerOf)),
    problemOf: (field) => (tries > 0 && wrong[field]) || sending.fieldProblem(pointerOf(field)),
    onSubmit: async (event) => {
      event.preventDefault();
      setTries(tries + 1);
      if (Object.values(wrong).some((said) => typeof said === 'string')) {
        // What the service said was of what was sent before.
        sending.forget();
        return;
      }
      if (!(await sending.send(send))) return;
      setTries(0);
      onSent?.();
    },
  };
}
