import type { StrokesPreview } from '../api/types.ts';
import { Field } from '../components/sending/Field.tsx';
import { fieldTime } from '../fieldTime.ts';
import { uploadWords } from '../words/upload.ts';
import { type Corrections, hasTimes } from './corrections.ts';
import { startProblem } from './startProblem.ts';
import { useTyped } from './useTyped.ts';

interface CorrectedProps {
  readonly preview: StrokesPreview;
  readonly said: Corrections;
  readonly onChange: (part: Partial<Corrections>) => void;
}

/** Start and rate, where the file does not tell them or tells them wrong. */
export function Corrected({ preview, said, onChange }: CorrectedProps) {
  const say = uploadWords;
  const missing = (pointer: string) => preview.problems.some((problem) => problem.pointer === pointer);
  const asFileSays = preview.startedAt === null ? '' : fieldTime(new Date(preview.startedAt));
  const start = useTyped(said.startedAt === '' ? asFileSays : said.startedAt, (startedAt) =>
    onChange({ startedAt }),
  );
  const rate = useTyped(said.rateHz, (rateHz) => onChange({ rateHz }));
  const badStart = said.startedAt !== '' && Number.isNaN(Date.parse(said.startedAt));
  return (
    <div class="controls">
      <Field label={say.start} hint={say.startHint} problem={badStart ? say.startBad : startProblem(preview)}>
        {(ids) => <input {...ids} {...start} type="datetime-local" step="1" />}
      </Field>
      {!hasTimes(preview.columns) && (
        <Field label={say.rate} hint={say.rateHint} problem={missing('/rateHz') ? say.rateMissing : null}>
          {(ids) => <input {...ids} {...rate} type="text" inputMode="decimal" maxLength={16} />}
        </Field>
      )}
    </div>
  );
}
