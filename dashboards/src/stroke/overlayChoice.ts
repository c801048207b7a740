import { OVERLAY_COLOURS } from '../charts/plot/theme.ts';

/** Which other strokes lie over a stroke: in the address, so that the picture can be sent to somebody. */
export const MOST_OVERLAYS = OVERLAY_COLOURS;
const NAME = 'with';

/** The second to the eighth stroke of a picture. */
export const LETTERS = ['B', 'C', 'D', 'E', 'F', 'G', 'H'] as const;

export function overlaysOf(search: string): string[] {
  const ids = (new URLSearchParams(search).get(NAME) ?? '').split(',').filter((id) => id !== '');
  return [...new Set(ids)].slice(0, MOST_OVERLAYS);
}

/** The address of the same page with these strokes laid over. */
export function withOverlays(ids: readonly string[]): string {
  return ids.length === 0 ? location.pathname : `${location.pathname}?${NAME}=${ids.join(',')}`;
}
