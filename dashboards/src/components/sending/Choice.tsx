import { useId } from 'preact/hooks';

interface ChoiceProps<Value extends string> {
  readonly label: string;
  /** What the option that is taken means, where its name alone does not tell. */
  readonly hint?: string;
  readonly options: readonly (readonly [Value, string])[];
  readonly value: Value;
  readonly onChange: (value: Value) => void;
}

/** A few options side by side, one of them taken. */
export function Choice<Value extends string>({ label, hint, options, value, onChange }: ChoiceProps<Value>) {
  const name = useId();
  return (
    <fieldset class="choice" aria-describedby={hint === undefined ? undefined : `${name}-hint`}>
      <legend>{label}</legend>
      {options.map(([option, text]) => (
        <label key={option}>
          <input
            type="radio"
            name={name}
            value={option}
            checked={option === value}
            onChange={() => onChange(option)}
          />
          <span>{text}</span>
        </label>
      ))}
      {hint !== undefined && (
        <p class="hint" id={`${name}-hint`}>
          {hint}
        </p>
      )}
    </fieldset>
  );
}
