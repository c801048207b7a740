/** What part of an upright axis a picture shows, in the axis's own unit. */
export interface View {
  readonly min: number;
  readonly max: number;
}

/** Nobody can read more out of a picture than a thousandth of it. */
const NARROWEST_PART = 1 / 1000;
/** Rounding apart, this is the whole. */
const WHOLE_PART = 0.999;

/** `part` times as wide a view, with the place `at` (in the axis's unit) staying where it is; within the whole. */
export function zoomed(view: View, whole: View, part: number, at = (view.min + view.max) / 2): View {
  const all = whole.max - whole.min;
  const width = Math.min(all, Math.max(all * NARROWEST_PART, (view.max - view.min) * part));
  const share = (at - view.min) / (view.max - view.min || 1);
  return within(at - share * width, width, whole);
}

/** The view moved by a part of its own width, as far as the whole goes. */
export function moved(view: View, whole: View, part: number): View {
  const width = view.max - view.min;
  return within(view.min + part * width, width, whole);
}

export function isWhole(view: View, whole: View): boolean {
  return view.max - view.min >= (whole.max - whole.min) * WHOLE_PART;
}

function within(min: number, width: number, whole: View): View {
  const from = Math.max(whole.min, Math.min(whole.max - width, min));
  return { min: from, max: Math.min(whole.max, from + width) };
}
