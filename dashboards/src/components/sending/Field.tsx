import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

interface FieldIds {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': boolean;
}

interface FieldProps {
  readonly label: string;
  readonly hint?: string;
  readonly problem?: string | null;
  /** Gets what ties the control to its label, hint and problem. */
  readonly children: (ids: FieldIds) => ComponentChildren;
}

/** One labelled control with its hint and what is wrong with it. */
export function Field({ label, hint, problem, children }: FieldProps) {
  const id = useId();
  const described = [hint && `${id}-hint`, problem && `${id}-problem`].filter(Boolean).join(' ');
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {hint !== undefined && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {children({ id, 'aria-describedby': described || undefined, 'aria-invalid': Boolean(problem) })}
      {problem && (
        <p class="field-problem" id={`${id}-problem`}>
          {problem}
        </p>
      )}
    </div>
  );
}
