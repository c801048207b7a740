/** What the page of a stroke says that the analysis failed on; the doctor counts strokes by it. */
export const SET_ASIDE_REASONS = {
  measuring: 'The record could not be measured.',
  judging: 'The record could not be judged.',
} as const;
