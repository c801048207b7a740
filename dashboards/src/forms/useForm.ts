import type { RefObject } from 'preact';
import { useState } from 'preact/hooks';
import type { CallProblem } from '../api/client.ts';
import { useFirstProblem } from '../components/useFirstProblem.ts';
import { useSending } from '../components/useSending.ts';

interface FormParts<Field extends string> {
  /** What is wrong with what was typed, by the name of the field; told once somebody tried to send it. */
  readonly wrong: Readonly<Partial<Record<Field, string | null>>>;
  readonly send: (idempotencyKey: string) => Promise<void>;
  /** Once it was taken: empties fields, closes. */
  readonly onSent?: () => void;
}

/** What a form shows of itself. */
export interface FormState<Field extends string = never> {
  readonly ref: RefObject<HTMLFormElement | null>;
  readonly busy: boolean;
  readonly problem: CallProblem | null;
  /** Of one field: what we know ourselves, else what the service said of it under this JSON pointer. */
  readonly problemOf: (field: Field, pointer?: string) => string | null;
  readonly onSubmit: (event: Event) => Promise<void>;
}

/** A form is sent whole and once at a time, keeps what was typed until it is taken, and leads to the first field at fault. */
export function useForm<Field extends string>({ wrong, send, onSent }: FormParts<Field>): FormState<Field> {
  const [tries, setTries] = useState(0);
  const ref = useFirstProblem(tries);
  const sending = useSending();
  return {
    ref,
    busy: sending.busy,
    problem: sending.problem,
    problemOf: (field, pointer = `/${field}`) => (tries > 0 && wrong[field]) || sending.fieldProblem(pointer),
    onSubmit: async (event) => {
      event.preventDefault();
      setTries(tries + 1);
      if (Object.values(wrong).some((said) => typeof said === 'string')) return;
      if (!(await sending.send(send))) return;
      setTries(0);
      onSent?.();
    },
  };
}
