import type { WarningKind } from '../warning.ts';

/** What must stand beside the numbers because of a warning that came up among the strokes after; null: nothing. */
export function aroseSentence(arose: WarningKind | null): string | null {
  if (arose !== 'dropped-load') return null;
  return 'Since then a side has run with hardly any load: that it draws less is no relief.';
}
