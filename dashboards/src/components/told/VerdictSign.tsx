import type { Verdict } from '../../api/types.ts';
import { words } from '../../words.ts';

/** Each verdict has a shape of its own, so that it reads without colour, small, and printed in grey. */
const shapes = {
  clear: <path d="M12 2a10 10 0 1 0 0 20 10 10 0 0 0 0-20M7 12.5l3.4 3.4L17 9" />,
  learning: <path d="M12 2a10 10 0 1 0 0 20 10 10 0 0 0 0-20M7.5 12h.01M12 12h.01M16.5 12h.01" />,
  watch: <path d="M12 2l10 10-10 10L2 12zM12 7v6M12 16.5h.01" />,
  service: <path d="M12 2.5L22.5 21h-21zM12 9.5v5M12 17.7h.01" />,
  stop: <path d="M8 2h8l6 6v8l-6 6H8l-6-6V8zM7 12h10" />,
  unknown: <path d="M3 3h18v18H3zM9.3 9.4a2.8 2.8 0 1 1 3.6 2.8c-.6.3-.9.7-.9 1.6M12 17h.01" />,
} as const satisfies Record<Verdict, unknown>;

/** The sign alone; the word stands beside it wherever it is used. */
export function VerdictSign({ verdict }: { readonly verdict: Verdict }) {
  return (
    <svg class={`sign sign-${verdict}`} viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      {shapes[verdict]}
    </svg>
  );
}

export function VerdictWord({ verdict }: { readonly verdict: Verdict }) {
  return (
    <span class={`verdict verdict-${verdict}`}>
      <VerdictSign verdict={verdict} />
      <strong>{words.verdicts[verdict].word}</strong>
    </span>
  );
}
