import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** Whether a page of this visit stands already: then another is drawn whole, so that going back ends where it began. */
let stands = false;

/** What stands below the first screen: drawn when that can be seen. */
export function Later({ children }: { readonly children: ComponentChildren }) {
  const [due, setDue] = useState(stands);
  useEffect(() => {
    stands = true;
    setDue(true);
  }, []);
  return due ? children : null;
}
