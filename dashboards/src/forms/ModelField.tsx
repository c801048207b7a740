import { useId } from 'preact/hooks';
import type { OverviewSummary } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { Field } from '../components/sending/Field.tsx';
import { words } from '../words.ts';

interface ModelFieldProps {
  readonly value: string;
  readonly onInput: (model: string) => void;
  readonly problem: string | null;
}

/** A coach's model, with those that are there already to choose from: coaches are compared by it. */
export function ModelField({ value, onInput, problem }: ModelFieldProps) {
  const say = words.forms;
  const list = useId();
  const known = useLoad<OverviewSummary>('/overview/summary');
  return (
    <Field label={say.model} hint={say.modelHint} problem={problem}>
      {(ids) => (
        <>
          <input
            {...ids}
            type="text"
            list={list}
            autocomplete="off"
            dir="auto"
            maxLength={300}
            value={value}
            onInput={(event) => onInput(event.currentTarget.value)}
          />
          <datalist id={list}>
            {known.value?.models.map((model) => (
              <option key={model} value={model} />
            ))}
          </datalist>
        </>
      )}
    </Field>
  );
}
