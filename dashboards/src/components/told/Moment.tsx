import { whenText } from '../../format.ts';
import { useAgo } from './useAgo.ts';

/** A moment in the reader's zone; `ago` puts how long since first. */
export function Moment({ at, ago = false }: { readonly at: string; readonly ago?: boolean }) {
  return ago ? <Ago at={at} /> : <time dateTime={at}>{whenText(at)}</time>;
}

function Ago({ at }: { readonly at: string }) {
  // Where the page was drawn the reader's zone may be unknown, and an attribute is not drawn twice.
  const tellZone = (time: HTMLTimeElement | null) => {
    if (time !== null) time.title = whenText(at);
  };
  return (
    <time dateTime={at} ref={tellZone}>
      {useAgo(at)}
    </time>
  );
}
