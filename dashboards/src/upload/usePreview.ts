import { useContext, useEffect, useState } from 'preact/hooks';
import { asProblem, type CallProblem, call } from '../api/client.ts';
import type { StrokesPreview } from '../api/types.ts';
import { SessionContext } from '../session.ts';
import { type Corrections, queryOf } from './corrections.ts';
import type { CsvFile } from './readCsvFile.ts';

export interface Preview {
  /** The latest that came: it stays while a newer one is on its way. */
  readonly value: StrokesPreview | null;
  readonly problem: CallProblem | null;
  readonly busy: boolean;
  readonly reload: () => void;
}

interface Held {
  readonly file: CsvFile;
  readonly value: StrokesPreview | null;
  readonly problem: CallProblem | null;
}

/** Asks what would be made of the file, anew with every correction; the latest question's answer counts. */
export function usePreview(roomId: string, file: CsvFile | null, said: Corrections): Preview {
  const { epoch } = useContext(SessionContext);
  const [held, setHeld] = useState<Held | null>(null);
  const [busy, setBusy] = useState(false);
  const [times, setTimes] = useState(0);
  const current = held !== null && held.file === file ? held : null;
  const query = queryOf(said, current?.value ?? null).toString();

  // A new sign-in asks again.
  useEffect(() => {
    if (file === null) return;
    let wanted = true;
    setBusy(true);
    const path = `/rooms/${roomId}/strokes/preview?${query}`;
    call<StrokesPreview>(path, { method: 'POST', csv: file.csv }).then(
      (value) => {
        if (!wanted) return;
        setHeld({ file, value, problem: null });
        setBusy(false);
      },
      (error: unknown) => {
        if (!wanted) return;
        setHeld((h) => ({ file, value: h?.file === file ? h.value : null, problem: asProblem(error) }));
        setBusy(false);
      },
    );
    return () => {
      wanted = false;
    };
  }, [roomId, file, query, epoch, times]);

  return {
    value: current?.value ?? null,
    problem: current?.problem ?? null,
    busy,
    reload: () => setTimes((n) => n + 1),
  };
}
