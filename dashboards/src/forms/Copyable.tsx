import { useId, useRef, useState } from 'preact/hooks';
import { words } from '../words.ts';

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
        rows={Math.min(8, text.split('\n').length)}
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
