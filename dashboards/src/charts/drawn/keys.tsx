import type { ComponentChildren } from 'preact';
import { SIDE_DASHES } from '../plot/theme.ts';

/** One entry of a chart's key: the mark as it is drawn, and what it is. */
function Key({ text, children }: { readonly text: string; readonly children: ComponentChildren }) {
  return (
    <li>
      <svg class="key" viewBox="0 0 28 14" aria-hidden="true" focusable="false">
        {children}
      </svg>
      <span dir="auto">{text}</span>
    </li>
  );
}

interface LineKeyProps {
  readonly text: string;
  readonly side: number;
  /** The only side in its picture: no dash is needed. */
  readonly solid?: boolean;
}

export function LineKey({ text, side, solid = false }: LineKeyProps) {
  const look = side % SIDE_DASHES.length;
  return (
    <Key text={text}>
      <path
        class={`key-side-${look + 1}`}
        d="M1 7h26"
        stroke-dasharray={solid ? undefined : SIDE_DASHES[look].join(' ')}
      />
    </Key>
  );
}

export function BandKey({ text }: { readonly text: string }) {
  return (
    <Key text={text}>
      <path class="key-band" d="M0 1h28v12H0z" />
    </Key>
  );
}

export function BeyondKey({ text }: { readonly text: string }) {
  return (
    <Key text={text}>
      <path class="key-beyond" d="M14 1l6 11H8z" />
    </Key>
  );
}

export function HollowKey({ text, side }: { readonly text: string; readonly side: number }) {
  return (
    <Key text={text}>
      <circle class={`key-side-${(side % SIDE_DASHES.length) + 1}`} cx="14" cy="7" r="4" />
    </Key>
  );
}

export function WorkKey({ text }: { readonly text: string }) {
  return (
    <Key text={text}>
      <path class="key-work" d="M14 0v14" stroke-dasharray="4 3" />
    </Key>
  );
}

export function ExpectedKey({ text }: { readonly text: string }) {
  return (
    <Key text={text}>
      <path class="key-expected" d="M1 7h26" stroke-dasharray="2 3" />
    </Key>
  );
}

export function MarkKey({ text, dip }: { readonly text: string; readonly dip: boolean }) {
  return (
    <Key text={text}>
      <path class="key-mark" d={dip ? 'M14 2l5 9H9z' : 'M14 12L9 3h10z'} />
    </Key>
  );
}

export function PhaseKey({
  text,
  phase,
}: {
  readonly text: string;
  readonly phase: 'inrush' | 'running' | 'end-stop' | 'pause';
}) {
  return (
    <Key text={text}>
      <path class={`key-phase-${phase}`} d="M2 2h24v10H2z" />
    </Key>
  );
}

export function SupplyKey({ text }: { readonly text: string }) {
  return (
    <Key text={text}>
      <path class="key-supply" d="M1 7h26" stroke-dasharray="1 3" />
    </Key>
  );
}

export function SamplesKey({ text }: { readonly text: string }) {
  return (
    <Key text={text}>
      <path class="key-samples" d="M1 8l3-3 3 4 3-5 3 6 3-5 3 3 3-4 4 4" />
    </Key>
  );
}

export function TurnKey({ text }: { readonly text: string }) {
  return (
    <Key text={text}>
      <path class="key-work" d="M14 0v14" stroke-dasharray="1 4" />
    </Key>
  );
}

interface LetterKeyProps {
  readonly letter: string;
  /** Its place among those laid over, from 0: its colour. */
  readonly place: number;
  readonly text: string;
}

export function LetterKey({ letter, place, text }: LetterKeyProps) {
  return (
    <li>
      <span class={`key-line overlay-${place + 1}`}>
        <svg class="key" viewBox="0 0 28 14" aria-hidden="true" focusable="false">
          <path class="key-overlay" d="M1 7h26" />
        </svg>
        <strong class="key-letter">{letter}</strong>
      </span>
      <span>{text}</span>
    </li>
  );
}

export function ForecastKey({ text }: { readonly text: string }) {
  return (
    <Key text={text}>
      <path class="key-forecast" d="M1 12L14 5M14 5h13M14 2v6M27 2v6" stroke-dasharray="none" />
    </Key>
  );
}
