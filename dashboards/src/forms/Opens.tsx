import { type ComponentChildren, createContext } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/** Closes the part that a form stands in, and puts the focus back to what opened it. */
export const CloseContext = createContext<() => void>(() => {});

interface OpensProps {
  readonly title: string;
  /** Grows each time that something else on the page asks for it: it opens, and its first field takes the focus. */
  readonly asked?: number;
  readonly children: ComponentChildren;
}

/** A form that is made when it is first opened; what was typed stays when it is closed and opened again. */
export function Opens({ title, asked = 0, children }: OpensProps) {
  const [opened, setOpened] = useState(false);
  const everOpened = useRef(false);
  everOpened.current ||= opened;
  const opener = useRef<HTMLElement>(null);
  const whole = useRef<HTMLDetailsElement>(null);
  const answered = useRef(0);
  useEffect(() => {
    if (asked === answered.current) return;
    if (!opened) return setOpened(true);
    answered.current = asked;
    whole.current?.querySelector('input')?.focus();
  }, [asked, opened]);
  const close = () => {
    setOpened(false);
    opener.current?.focus();
  };
  return (
    <details
      ref={whole}
      class="opens"
      open={opened}
      onToggle={(event) => setOpened(event.currentTarget.open)}
    >
      <summary ref={opener}>{title}</summary>
      {everOpened.current && <CloseContext.Provider value={close}>{children}</CloseContext.Provider>}
    </details>
  );
}
