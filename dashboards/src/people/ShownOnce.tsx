import { useTakesFocus } from '../components/focus/useTakesFocus.ts';
import { Copyable } from '../forms/Copyable.tsx';

interface ShownOnceProps {
  readonly label: string;
  readonly about: string;
  readonly text: string;
  readonly close: string;
  readonly onClose: () => void;
}

/** A secret that the service answers once: kept in sight until whoever asked for it says that it is kept. */
export function ShownOnce({ label, about, text, close, onClose }: ShownOnceProps) {
  const place = useTakesFocus<HTMLElement>();
  return (
    <section ref={place} class="note" aria-label={label} tabIndex={-1}>
      <p>{about}</p>
      <Copyable label={label} text={text} />
      <button type="button" onClick={onClose}>
        {close}
      </button>
    </section>
  );
}

/** Where an invitation leads. */
export function joinLink(invitation: string): string {
  return `${location.origin}/join#${invitation}`;
}
