import { type ComponentChildren, createContext } from 'preact';
import { useRef, useState } from 'preact/hooks';

/** Closes the part that a form stands in, and puts the focus back to what opened it. */
export const CloseContext = createContext<() => void>(() => {});

interface OpensProps {
  readonly title: string;
  readonly children: ComponentChildren;
}

/** A form that is made when it is first opened; what was typed stays when it is closed and opened again. */
export function Opens({ title, children }: OpensProps) {
  const [opened, setOpened] = useState(false);
  const everOpened = useRef(false);
  everOpened.current ||= opened;
  const opener = useRef<HTMLElement>(null);
  const close = () => {
    setOpened(false);
    opener.current?.focus();
  };
  return (
    <details class="opens" open={opened} onToggle={(event) => setOpened(event.currentTarget.open)}>
      <summary ref={opener}>{title}</summary>
      {everOpened.current && <CloseContext.Provider value={close}>{children}</CloseContext.Provider>}
    </details>
  );
}
