import { useRef, useState } from 'preact/hooks';
import { asProblem, CallProblem, newKey } from '../../api/client.ts';
import { words } from '../../words.ts';
import { isOf } from './untold.ts';

/**
 * How it stands with something that a form sends. A form sends once at a time, and keeps what was typed. Its button is
 * `aria-disabled` while it is busy: one that is disabled would let the focus fall.
 */
export interface Sending {
  readonly busy: boolean;
  readonly problem: CallProblem | null;
  /** What the service says of one field, by its JSON pointer. */
  readonly fieldProblem: (pointer: string) => string | null;
  readonly send: (what: (key: string) => Promise<void>) => Promise<boolean>;
  /** What the service said is of before. */
  readonly forget: () => void;
}

export function useSending(): Sending {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<CallProblem | null>(null);
  const key = useRef(newKey());
  const running = useRef(false);
  return {
    busy,
    problem,
    fieldProblem: (pointer) => problem?.fields.find((fault) => isOf(fault.pointer, pointer))?.detail ?? null,
    forget: () => setProblem(null),
    send: async (what) => {
      if (running.current) return false;
      running.current = true;
      setBusy(true);
      setProblem(null);
      try {
        await what(key.current);
        key.current = newKey();
        return true;
      } catch (error) {
        const known = asProblem(error);
        // Only a call that was never answered may be the same call again.
        if (known.status > 0) key.current = newKey();
        setProblem(known.status > 0 ? known : new CallProblem(0, words.problems.notSent));
        return false;
      } finally {
        running.current = false;
        setBusy(false);
      }
    },
  };
}

/** The same for choices that are kept as they are made: one made while another is being kept is kept next. */
export function useSendingInTurn(): Sending {
  const sending = useSending();
  const before = useRef<Promise<unknown>>(Promise.resolve());
  return {
    ...sending,
    send: (what) => {
      const done = before.current.then(() => sending.send(what));
      before.current = done;
      return done;
    },
  };
}
