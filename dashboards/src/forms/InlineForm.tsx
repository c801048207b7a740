import type { ComponentChildren } from 'preact';
import { Failure } from '../components/coming/states.tsx';
import type { FormState } from './useForm.ts';

interface InlineFormProps {
  readonly form: Omit<FormState, 'problemOf'>;
  /** Its button, and what that says while it is being sent. */
  readonly action: string;
  readonly busy: string;
  readonly children: ComponentChildren;
}

/** A form between other things of a page, with what went wrong above its fields. */
export function InlineForm({ form, action, busy, children }: InlineFormProps) {
  return (
    <form ref={form.ref} class="inline-form" onSubmit={form.onSubmit} noValidate>
      {form.problem !== null && <Failure problem={form.problem} />}
      {children}
      <button type="submit" class="main-action" aria-disabled={form.busy}>
        {form.busy ? busy : action}
      </button>
    </form>
  );
}
