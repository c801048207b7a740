import { nameSide } from '../names.ts';
import type { ComparedGroup, MeasureShift } from './compared.ts';
import { doingWords } from './doingWords.ts';

/** A running current's shift that could be told, before in amperes. */
export interface ToldShift {
  readonly group: ComparedGroup;
  readonly before: number;
  readonly shift: number;
  readonly lower: number;
  readonly upper: number;
  /** Among all sides and directions; `hint`: by itself only. */
  readonly isChange: 'surely' | 'hint' | null;
}

/** The running current's shift of each group that has one. */
export function toldShifts(groups: readonly ComparedGroup[]): ToldShift[] {
  return groups.flatMap((group) => {
    const running = group.shifts.find(({ measure }) => measure === 'runningAmps');
    return running === undefined ? [] : told(group, running);
  });
}

function told(
  group: ComparedGroup,
  { before, shift, lower, upper, excludesZero }: MeasureShift,
): ToldShift[] {
  if (before === null || shift === null || lower === null || upper === null) return [];
  const isChange = group.levelIsSure ? 'surely' : excludesZero ? 'hint' : null;
  return [{ group, before, shift, lower, upper, isChange }];
}

/** What the running current surely did, side by side, and between what; null: nothing. */
export function levelSentence(shifts: readonly ToldShift[], sides: readonly string[]): string | null {
  return sideBySide(shifts, sides, { isChange: 'surely', draws: 'draws' });
}

/** What it did by an interval of its own that does not hold beside all the others; null: nothing. */
export function hintSentence(shifts: readonly ToldShift[], sides: readonly string[]): string | null {
  const hints = sideBySide(shifts, sides, { isChange: 'hint', draws: 'seems to draw' });
  return hints === null
    ? null
    : `${hints}: a hint, not proof, for where so much is compared chance alone may come to as much`;
}

interface Telling {
  readonly isChange: 'surely' | 'hint';
  readonly draws: string;
}

function sideBySide(
  shifts: readonly ToldShift[],
  sides: readonly string[],
  { isChange, draws }: Telling,
): string | null {
  const sentences = shifts
    .filter((each) => each.isChange === isChange)
    .map(({ group, before, shift, lower, upper }) => {
      const percent = (amps: number) => `${Math.abs(Math.round((100 * amps) / before))} %`;
      const less = shift < 0 ? 'less' : 'more';
      const [near, far] = [lower, upper].sort((a, b) => Math.abs(a) - Math.abs(b));
      // A change that is told is not told as nothing: its nearer end may still round to it.
      const between =
        percent(near) === '0 %' ? `up to ${percent(far)}` : `between ${percent(near)} and ${percent(far)}`;
      const who = nameSide(group.side, sides);
      return `${doingWords(group.direction)}, ${who} ${draws} ${percent(shift)} ${less} than before (${between} ${less})`;
    });
  return sentences.length === 0 ? null : sentences.join('; ');
}

/** The largest change that the shifts leave open, as a part of what was before. */
export function leftOpen(shifts: readonly ToldShift[]): number {
  return Math.max(...shifts.map(({ before, lower, upper }) => Math.max(-lower, upper) / before));
}
