import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Logger, LoggerWithToken } from '../api/types.ts';
import { entriesOf } from '../entriesOf.ts';
import { words } from '../words.ts';
import { InlineForm } from './InlineForm.tsx';
import { CloseContext } from './Opens.tsx';
import { SelectField } from './SelectField.tsx';
import { TextField } from './TextField.tsx';
import { useForm } from './useForm.ts';

interface LoggerFormProps {
  readonly coachId: string;
  /** The logger to change; null for a new one, whose token is handed on. */
  readonly logger: Logger | null;
  readonly onDone: (made: LoggerWithToken | null) => void;
}

const SENSORS = entriesOf(words.forms.sensors);

/** Makes a logger, or changes one. Whoever adds one goes to the motor's wire next: what to mind there stands with it. */
export function LoggerForm({ coachId, logger, onDone }: LoggerFormProps) {
  const say = words.forms;
  const close = useContext(CloseContext);
  const [name, setName] = useState(logger?.name ?? '');
  const [sensor, setSensor] = useState<Logger['sensor']>(logger?.sensor ?? 'clamp');
  const form = useForm<'name' | 'sensor'>({
    wrong: { name: name.trim() === '' ? say.nameMissing : null, sensor: null },
    send: async (idempotencyKey) => {
      const body = { name: name.trim(), sensor };
      if (logger !== null) await call(`/loggers/${logger.id}`, { method: 'PATCH', body });
      const path = `/coaches/${coachId}/loggers`;
      const made =
        logger === null ? await call<LoggerWithToken>(path, { method: 'POST', body, idempotencyKey }) : null;
      close();
      onDone(made);
    },
    onSent: () => {
      if (logger === null) setName('');
    },
  });
  return (
    <InlineForm form={form} action={logger === null ? say.addLogger : say.save} busy={say.saving}>
      <TextField
        label={say.loggerName}
        hint={say.loggerNameHint}
        value={name}
        onInput={setName}
        maxLength={300}
        problem={form.problemOf('name')}
      />
      <SelectField
        label={say.sensor}
        value={sensor}
        options={SENSORS}
        onChange={setSensor}
        problem={form.problemOf('sensor')}
      />
      {logger === null && (
        <div class="cautions">
          <h3>{say.beforeFitting}</h3>
          <ul>
            {say.fittingCautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </div>
      )}
    </InlineForm>
  );
}
