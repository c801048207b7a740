import { useId, useRef, useState } from 'preact/hooks';
import { words } from '../words.ts';

const MOST_LINES = 8;
/** As many characters stand in a line on a phone. */
const CHARACTERS_IN_LINE = 34;

/** Long lines wrap: what is to be copied is seen whole. */
const linesOf = (text: string): number =>
  text
    .split('\n')
    .reduce((lines, { length }) => lines + Math.max(1, Math.ceil(length / CHARACTERS_IN_LINE)), 0);

interface CopyableProps {
  readonly label: string;
  readonly text: string;
}

/** Text to be taken elsewhere, with a button that copies it; where the browser forbids that, it is marked to be copied by hand. */
export function Copyable({ label, text }: CopyableProps) {
  const id = useId();
  const [copied, setCopied] = useState(false);
  const shown = useRef<HTMLTextAreaElement>(null);
  const copy = async () => {
    shown.current?.select();
    try {
      await navigator.clipboard.writeText(text);
      setCopied(true);
    } catch {
      // No clipboard on plain http: it is selected already.
    }
  };
  return (
    <div class="copyable">
      <label for={id}>{label}</label>
      <textarea
        ref={shown}
        id={id}
        readOnly
        rows={Math.min(MOST_LINES, linesOf(text))}
        value={text}
        spellcheck={false}
      />
      <button type="button" onClick={copy}>
        {words.forms.copy}
      </button>{' '}
      <span role="status" class="about">
        {copied && words.forms.copied}
      </span>
    </div>
  );
}
