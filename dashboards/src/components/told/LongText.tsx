import { useState } from 'preact/hooks';
import { words } from '../../words.ts';
import { beginningOf } from './beginningOf.ts';

/** What somebody wrote, in its own lines; of a long text the beginning, and the rest for whoever asks for it. */
export function LongText({ text }: { readonly text: string }) {
  const [whole, setWhole] = useState(false);
  const beginning = beginningOf(text);
  return (
    <>
      <p class="notes" dir="auto">
        {whole ? text : beginning}
      </p>
      {beginning !== text && (
        <button type="button" class="quiet" aria-expanded={whole} onClick={() => setWhole(!whole)}>
          {whole ? words.lessOfText : words.restOfText}
        </button>
      )}
    </>
  );
}
