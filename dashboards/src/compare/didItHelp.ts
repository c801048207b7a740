import type { ComparedGroup } from '../api/types.ts';

/**
 * What became of the current. The running current of the sides took `less`, `more`, or one and the other: `both`, or `mostlyLess`
 * where far more went than came. Where no change of it is sure, single places may have: `placeLess`, `placeMore`, or both. `same`:
 * no change is sure at all; `unknown`: there were too few strokes.
 */
export type Outcome =
  | 'less'
  | 'mostlyLess'
  | 'both'
  | 'more'
  | 'placeLess'
  | 'placeMore'
  | 'same'
  | 'unknown';

/** A side that is relieved gives part of its load to the other: so much more must have gone than come. A choice, no source. */
const FAR_MORE = 3;

/** Only changes that are sure among all sides and directions count: a change within its uncertainty is none. */
export function outcomeOf(groups: readonly ComparedGroup[]): Outcome {
  const shifts = groups.flatMap(({ levelIsSure, shifts }) =>
    shifts.flatMap(({ measure, shift }) =>
      measure === 'runningAmps' && shift !== null ? [{ shift, levelIsSure }] : [],
    ),
  );
  if (shifts.length === 0) return 'unknown';
  const sure = shifts.flatMap(({ shift, levelIsSure }) => (levelIsSure ? [shift] : []));
  const level = balanceOf(sure);
  const places = groups.flatMap(({ changedBins }) => changedBins.map(({ shiftAmps }) => shiftAmps));
  switch (level) {
    case 'same':
      return ofPlaces(places);
    case 'less':
    case 'mostlyLess':
      return places.some((amps) => amps > largestOf(sure)) ? 'both' : level;
    case 'more':
      return places.some((amps) => -amps > largestOf(sure)) ? 'both' : level;
    case 'both':
      return level;
  }
}

function ofPlaces(places: readonly number[]): Outcome {
  const balance = balanceOf(places);
  switch (balance) {
    case 'less':
    case 'mostlyLess':
      return 'placeLess';
    case 'more':
      return 'placeMore';
    default:
      return balance;
  }
}

const largestOf = (amps: readonly number[]): number => Math.max(...amps.map(Math.abs));

/** Whether more amperes went or came. */
function balanceOf(amps: readonly number[]): 'less' | 'mostlyLess' | 'both' | 'more' | 'same' {
  const sum = (some: readonly number[]) => some.reduce((total, each) => total + Math.abs(each), 0);
  const [gone, come] = [sum(amps.filter((each) => each < 0)), sum(amps.filter((each) => each > 0))];
  if (gone === 0) return come === 0 ? 'same' : 'more';
  if (come === 0) return 'less';
  if (gone >= FAR_MORE * come) return 'mostlyLess';
  return come >= FAR_MORE * gone ? 'more' : 'both';
}
