import { changedPlaces } from './changedPlaces.ts';
import type { ComparedGroup } from './compared.ts';
import { hintSentence, leftOpen, levelSentence, toldShifts } from './levelSentence.ts';
import { placesSentence } from './placesSentence.ts';

/**
 * What a customer understands: what the running current did, side by side, and how sure that is; what single places of
 * the travel did, and what it means; where nothing is told, how much may have changed unseen; and what is a hint only.
 */
export function compareSentence(groups: readonly ComparedGroup[], sides: readonly string[]): string {
  const shifts = toldShifts(groups);
  if (shifts.length === 0) {
    return 'There are not yet two strokes before and two after that go the same ways: no comparison can be made.';
  }
  const level = levelSentence(shifts, sides);
  const places = placesSentence(changedPlaces(groups), sides);
  const hint = hintSentence(shifts, sides);
  const apart =
    level !== null
      ? null
      : places === null
        ? `the running current is not told apart from before the work, neither as a whole nor at any place of the travel: with these strokes a change of the whole by up to ${Math.ceil(100 * leftOpen(shifts))} % would not show`
        : 'as a whole, the running current is not told apart from before';
  return [level, places, apart, hint]
    .flatMap((text) => (text === null ? [] : `${text[0].toUpperCase()}${text.slice(1)}.`))
    .join(' ');
}
