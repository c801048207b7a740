import { words } from '../../words.ts';
import { isWhole, moved, type View, zoomed } from './view.ts';

interface ZoomBarProps {
  readonly whole: View;
  readonly view: View;
  readonly show: (view: View) => void;
  /** "20% to 45%". */
  readonly viewText: (view: View) => string;
}

const CLOSER = 0.5;
const STEP = 0.25;

/** Looks closer at a picture without a pointer: by buttons, and by the keys that their names tell. */
export function ZoomBar({ whole, view, show, viewText }: ZoomBarProps) {
  const say = words.zoom;
  const all = isWhole(view, whole);
  const acts = {
    closer: () => show(zoomed(view, whole, CLOSER)),
    wider: () => show(zoomed(view, whole, 1 / CLOSER)),
    back: () => show(moved(view, whole, -STEP)),
    on: () => show(moved(view, whole, STEP)),
    all: () => show(whole),
  };
  const byKey: Readonly<Record<string, () => void>> = {
    '+': acts.closer,
    '=': acts.closer,
    '-': acts.wider,
    ArrowLeft: acts.back,
    ArrowRight: acts.on,
    '0': acts.all,
  };
  return (
    <fieldset
      class="zoom no-print"
      onKeyDown={(event) => {
        const act = event.ctrlKey || event.metaKey || event.altKey ? undefined : byKey[event.key];
        if (act === undefined) return;
        event.preventDefault();
        act();
      }}
    >
      <legend class="unseen">{say.title}</legend>
      <button type="button" aria-label={say.closer} title={say.closer} onClick={acts.closer}>
        +
      </button>
      <button type="button" aria-label={say.wider} title={say.wider} aria-disabled={all} onClick={acts.wider}>
        −
      </button>
      <button type="button" aria-label={say.back} title={say.back} aria-disabled={all} onClick={acts.back}>
        ‹
      </button>
      <button type="button" aria-label={say.on} title={say.on} aria-disabled={all} onClick={acts.on}>
        ›
      </button>
      <button type="button" aria-disabled={all} onClick={acts.all}>
        {say.all}
      </button>
      <span class="zoom-view" role="status">
        {all ? '' : say.shown(viewText(view))}
      </span>
    </fieldset>
  );
}
