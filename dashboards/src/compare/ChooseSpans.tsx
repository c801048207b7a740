import { useState } from 'preact/hooks';
import { Field } from '../components/Field.tsx';
import { navigate } from '../router.ts';
import { words } from '../words.ts';
import { SPAN_NAMES, type SpanName, type Spans, spansAddress } from './question.ts';

interface ChooseSpansProps {
  readonly roomId: string;
  readonly given: Spans | null;
}

/** Compares any two spans of days, in the reader's own zone. */
export function ChooseSpans({ roomId, given }: ChooseSpansProps) {
  const say = words.compare;
  const [typed, setTyped] = useState<Record<SpanName, string>>(
    given ?? { beforeFrom: '', beforeTo: '', afterFrom: '', afterTo: '' },
  );
  const [tried, setTried] = useState(false);
  const problemOf = (name: SpanName): string | null => {
    if (typed[name] === '') return say.dayMissing;
    const isEnd = name === 'beforeTo' || name === 'afterTo';
    const from = name === 'beforeTo' ? typed.beforeFrom : typed.afterFrom;
    return isEnd && from !== '' && typed[name] < from ? say.dayReversed : null;
  };
  const submit = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (SPAN_NAMES.every((name) => problemOf(name) === null)) navigate(spansAddress(roomId, typed));
  };
  return (
    <form class="spans" onSubmit={submit} noValidate>
      {SPAN_NAMES.map((name) => (
        <Field key={name} label={say.spans[name]} problem={tried ? problemOf(name) : null}>
          {(ids) => (
            <input
              {...ids}
              type="date"
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
