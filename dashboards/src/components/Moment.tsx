import { agoText, whenText } from '../format.ts';

/** A moment in the reader's zone; `ago` puts how long since first. */
export function Moment({ at, ago = false }: { readonly at: string; readonly ago?: boolean }) {
  return (
    <time dateTime={at} title={ago ? whenText(at) : undefined}>
      {ago ? agoText(at) : whenText(at)}
    </time>
  );
}
