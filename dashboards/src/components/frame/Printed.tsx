import { useEffect, useState } from 'preact/hooks';
import { words } from '../../words.ts';
import { Moment } from '../told/Moment.tsx';

/** On paper alone, when it was printed: "4 hours ago" tells nothing there by itself. */
export function Printed() {
  const [at, setAt] = useState<string | null>(null);
  useEffect(() => {
    const print = () => setAt(new Date().toISOString());
    window.addEventListener('beforeprint', print);
    return () => window.removeEventListener('beforeprint', print);
  }, []);
  if (at === null) return null;
  return (
    <p class="on-paper printed">
      {words.printed} <Moment at={at} />
    </p>
  );
}
