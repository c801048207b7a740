import { Field } from '../components/sending/Field.tsx';

interface SelectFieldProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly (readonly [Value, string])[];
  readonly onChange: (value: Value) => void;
  readonly hint?: string;
  readonly problem?: string | null;
}

/** One of a few, with its label. */
export function SelectField<Value extends string>(props: SelectFieldProps<Value>) {
  const { label, value, options, onChange, hint, problem } = props;
  return (
    <Field label={label} hint={hint} problem={problem}>
      {(ids) => (
        <select
          {...ids}
          value={value}
          // The options are the values themselves.
          onChange={(event) => onChange(event.currentTarget.value as Value)}
        >
          {options.map(([option, text]) => (
            <option key={option} value={option}>
              {text}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
