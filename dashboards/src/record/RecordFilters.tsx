import type { Colleague, Page } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { DayField } from '../forms/DayField.tsx';
import { SelectField } from '../forms/SelectField.tsx';
import { recordWords } from '../words/record.ts';
import { RECORD_KINDS, type RecordKind } from './kinds.ts';
import { EVERYTHING, type RecordQuestion, recordAddress } from './question.ts';

interface RecordFiltersProps {
  readonly question: RecordQuestion;
  readonly onChange: (question: RecordQuestion) => void;
}

/** Which acts are shown: by what was done, by whom, on which days. They stand in the address. */
export function RecordFilters({ question, onChange }: RecordFiltersProps) {
  const say = recordWords.record;
  const people = useLoad<Page<Colleague>>('/people?limit=500').value?.items ?? [];
  const set = (part: Partial<RecordQuestion>) => onChange({ ...question, ...part });
  return (
    <search aria-label={say.filters} class="find">
      <div class="filters">
        <SelectField<RecordKind | ''>
          label={say.kind}
          value={question.kind}
          options={[
            ['', say.any],
            ...RECORD_KINDS.map((kind): [RecordKind, string] => [kind, recordWords.recordKinds[kind]]),
          ]}
          onChange={(kind) => set({ kind })}
        />
        <SelectField
          label={say.person}
          value={question.person}
          options={[['', say.any], ...people.map(({ id, name }): [string, string] => [id, name])]}
          onChange={(person) => set({ person })}
        />
        <DayField label={say.from} value={question.from} onInput={(from) => set({ from })} />
        <DayField label={say.to} value={question.to} onInput={(to) => set({ to })} />
      </div>
      {recordAddress(question) !== recordAddress(EVERYTHING) && (
        <button type="button" class="quiet" onClick={() => onChange(EVERYTHING)}>
          {say.reset}
        </button>
      )}
    </search>
  );
}
