import { nameSide } from '../names.ts';
import type { ChangedPlace } from './changedPlaces.ts';
import { doingWords } from './doingWords.ts';

/** As many as can be heard in one sentence. */
const MOST_PLACES = 2;

/** What changed at single places, the largest changes, in the order of the travel, and what that means; null: none did. */
export function placesSentence(places: readonly ChangedPlace[], sides: readonly string[]): string | null {
  if (places.length === 0) return null;
  const told = places.slice(0, MOST_PLACES).sort((a, b) => a.from - b.from);
  const texts = told.map(({ side, directions, from, to, shiftAmps }) => {
    const where = `between ${wholePercent(from)} and ${wholePercent(to)} of the way out`;
    const change = `${ampsText(shiftAmps)} ${shiftAmps < 0 ? 'less' : 'more'} than before`;
    return `${where}, ${nameSide(side, sides)} draws ${change}, ${directions.map(doingWords).join(' and ')}`;
  });
  const others = places.length - told.length;
  const more = others === 0 ? '' : `, and ${others} more ${others === 1 ? 'place' : 'places'} changed`;
  return `${texts.join('; ')}${more}: ${meaning(told)}`;
}

function meaning(places: readonly ChangedPlace[]): string {
  const isLess = places.some(({ shiftAmps }) => shiftAmps < 0);
  const isMore = places.some(({ shiftAmps }) => shiftAmps > 0);
  if (isLess && isMore)
    return 'what held it back is gone or less where it draws less, and something holds it back more where it draws more';
  return isLess
    ? 'what held it back there is gone or less'
    : 'something holds it back there more than before';
}

const wholePercent = (part: number): string => `${Math.round(100 * part)} %`;

/** Two digits, which is as much as such a shift is worth, and thousandths at the least. */
function ampsText(amps: number): string {
  return `${Math.max(0.001, Math.round(1000 * Number(Math.abs(amps).toPrecision(2))) / 1000)} A`;
}
