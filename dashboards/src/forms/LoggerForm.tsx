import { useContext, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import type { Logger, LoggerWithToken } from '../api/types.ts';
import { Failure } from '../components/states.tsx';
import { useFirstProblem } from '../components/useFirstProblem.ts';
import { useSending } from '../components/useSending.ts';
import { words } from '../words.ts';
import { CloseContext } from './Opens.tsx';
import { SelectField } from './SelectField.tsx';
import { TextField } from './TextField.tsx';

interface LoggerFormProps {
  readonly coachId: string;
  /** The logger to change; null for a new one, whose token is handed on. */
  readonly logger: Logger | null;
  readonly onDone: (made: LoggerWithToken | null) => void;
}

const SENSORS = Object.entries(words.forms.sensors) as [Logger['sensor'], string][];

/** Makes a logger, or changes one. */
export function LoggerForm({ coachId, logger, onDone }: LoggerFormProps) {
  const say = words.forms;
  const close = useContext(CloseContext);
  const [name, setName] = useState(logger?.name ?? '');
  const [sensor, setSensor] = useState<Logger['sensor']>(logger?.sensor ?? 'clamp');
  const [tries, setTries] = useState(0);
  const form = useFirstProblem(tries);
  const { busy, problem, fieldProblem, send } = useSending();
  const missing = name.trim() === '' ? say.nameMissing : null;
  const submit = async (event: Event) => {
    event.preventDefault();
    setTries(tries + 1);
    if (missing !== null) return;
    const body = { name: name.trim(), sensor };
    let made: LoggerWithToken | null = null;
    const sent = await send(async (idempotencyKey) => {
      if (logger !== null) await call(`/loggers/${logger.id}`, { method: 'PATCH', body });
      else
        made = await call<LoggerWithToken>(`/coaches/${coachId}/loggers`, {
          method: 'POST',
          body,
          idempotencyKey,
        });
    });
    if (!sent) return;
    if (logger === null) setName('');
    setTries(0);
    close();
    onDone(made);
  };
  return (
    <form ref={form} class="inline-form" onSubmit={submit} noValidate>
      {problem !== null && <Failure problem={problem} />}
      <TextField
        label={say.loggerName}
        hint={say.loggerNameHint}
        value={name}
        onInput={setName}
        maxLength={300}
        problem={(tries > 0 && missing) || fieldProblem('/name')}
      />
      <SelectField
        label={say.sensor}
        value={sensor}
        options={SENSORS}
        onChange={setSensor}
        problem={fieldProblem('/sensor')}
      />
      <button type="submit" class="main-action" disabled={busy}>
        {busy ? say.saving : logger === null ? say.addLogger : say.save}
      </button>
    </form>
  );
}
