import { useState } from 'preact/hooks';

interface Typed {
  readonly value: string;
  readonly onInput: (event: Event & { readonly currentTarget: HTMLInputElement }) => void;
  readonly onChange: (event: Event & { readonly currentTarget: HTMLInputElement }) => void;
  readonly onBlur: () => void;
}

/**
 * A field that hands over what was typed once it is whole, and shows what is held. Until the reader has left it, it shows
 * what is typed: an answer that comes meanwhile draws the page anew, and would write what is held over it.
 */
export function useTyped(held: string, take: (whole: string) => void): Typed {
  const [typed, setTyped] = useState<string | null>(null);
  return {
    value: typed ?? held,
    onInput: (event) => setTyped(event.currentTarget.value),
    onChange: (event) => take(event.currentTarget.value),
    onBlur: () => setTyped(null),
  };
}
