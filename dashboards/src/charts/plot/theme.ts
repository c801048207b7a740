/** The chart's colours, read from the same tokens as the rest of the page. */
export interface ChartTheme {
  readonly ink: string;
  readonly soft: string;
  readonly grid: string;
  readonly surface: string;
  readonly band: string;
  readonly beyond: string;
  readonly work: string;
  readonly supply: string;
  readonly phaseInrush: string;
  readonly phaseRunning: string;
  readonly phaseEndStop: string;
  readonly sides: readonly SideLook[];
  /** Of strokes that are laid over another, in their order. */
  readonly overlays: readonly string[];
}

/** A side is told by its colour and by its dash, so that it reads in grey too. */
export interface SideLook {
  readonly colour: string;
  readonly dash: readonly number[];
}

export const SIDE_DASHES: readonly (readonly number[])[] = [[], [7, 4], [2, 3], [10, 3, 2, 3]];

/** As many strokes may be laid over one (`tokens.css` has as many colours). */
export const OVERLAY_COLOURS = 7;

export function readTheme(): ChartTheme {
  const style = getComputedStyle(document.documentElement);
  const token = (name: string) => style.getPropertyValue(`--${name}`).trim();
  return {
    ink: token('ink'),
    soft: token('ink-soft'),
    grid: token('line'),
    surface: token('surface'),
    band: token('chart-band'),
    beyond: token('chart-beyond'),
    work: token('chart-work'),
    supply: token('chart-supply'),
    phaseInrush: token('phase-inrush'),
    phaseRunning: token('phase-running'),
    phaseEndStop: token('phase-end-stop'),
    overlays: Array.from({ length: OVERLAY_COLOURS }, (_, i) => token(`overlay-${i + 1}`)),
    sides: SIDE_DASHES.map((dash, i) => ({ colour: token(`side-${i + 1}`), dash })),
  };
}

export const lookOf = (theme: ChartTheme, sideIndex: number): SideLook =>
  theme.sides[sideIndex % theme.sides.length];
