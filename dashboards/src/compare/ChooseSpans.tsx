import { useState } from 'preact/hooks';
import { Field } from '../components/sending/Field.tsx';
import { fieldToday } from '../fieldTime.ts';
import { navigate } from '../router.ts';
import { compareWords } from '../words/compare.ts';
import { SPAN_NAMES, type SpanName, type Spans, spansAddress } from './question.ts';
import { spanProblems } from './spanProblems.ts';

interface ChooseSpansProps {
  readonly roomId: string;
  readonly given: Spans | null;
}

/** Compares any two spans of days, in the reader's own zone. */
export function ChooseSpans({ roomId, given }: ChooseSpansProps) {
  const say = compareWords;
  const [typed, setTyped] = useState<Record<SpanName, string>>(
    given ?? { beforeFrom: '', beforeTo: '', afterFrom: '', afterTo: '' },
  );
  // Days that came by a link are told of at once.
  const [tried, setTried] = useState(given !== null);
  const today = fieldToday();
  const problems = spanProblems(typed, today);
  const submit = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (Object.keys(problems).length === 0) navigate(spansAddress(roomId, typed));
  };
  return (
    <form class="spans" onSubmit={submit} noValidate>
      {SPAN_NAMES.map((name) => (
        <Field key={name} label={say.spans[name]} problem={tried ? (problems[name] ?? null) : null}>
          {(ids) => (
            <input
              {...ids}
              type="date"
              max={today}
              value={typed[name]}
              onInput={(event) => setTyped({ ...typed, [name]: event.currentTarget.value })}
            />
          )}
        </Field>
      ))}
      <button type="submit" class="main-action">
        {say.compareSpans}
      </button>
    </form>
  );
}
