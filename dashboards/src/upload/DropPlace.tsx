import { useId, useRef, useState } from 'preact/hooks';
import { uploadWords } from '../words/upload.ts';

interface DropProps {
  /** A file has been taken already. */
  readonly another: boolean;
  readonly onFile: (file: File) => void;
}

/** Takes a file: dropped, or chosen with the browser's own means, as on a phone. */
export function DropPlace({ another, onFile }: DropProps) {
  const say = uploadWords;
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
  const take = (files: FileList | null | undefined) => {
    const [file] = files ?? [];
    if (file !== undefined) onFile(file);
    // The same file, changed in between, can be chosen again.
    if (input.current !== null) input.current.value = '';
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is the shorter way for a mouse; the button is the way for all.
    <div
      class={over ? 'drop drop-over' : 'drop'}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        take(event.dataTransfer?.files);
      }}
    >
      {!another && <span class="drop-word">{say.drop}</span>}
      <label class="drop-label" for={id}>
        {another ? say.another : say.choose}
      </label>
      <input
        ref={input}
        id={id}
        class="drop-input"
        type="file"
        accept=".csv,.txt,.tsv,text/csv,text/plain,text/tab-separated-values"
        onChange={(event) => take(event.currentTarget.files)}
      />
    </div>
  );
}
