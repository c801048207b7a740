import type { Direction } from '../trace.ts';
import type { ChangedRange, ComparedGroup } from './compared.ts';

/** A stretch of travel of one side that changed, in one direction or in both. */
export interface ChangedPlace extends ChangedRange {
  readonly side: string;
  readonly directions: readonly Direction[];
}

/** More of the travel than this is no place: the level, where it is sure, says it. */
const MOST_OF_TRAVEL = 0.5;

/** The places that changed by themselves, side by side; where both directions tell one place, it is one. The largest first. */
export function changedPlaces(groups: readonly ComparedGroup[]): ChangedPlace[] {
  const places: ChangedPlace[] = [];
  for (const { side, direction, levelIsSure, changedBins } of groups) {
    const covered = changedBins.reduce((sum, { from, to }) => sum + to - from, 0);
    if (levelIsSure && covered > MOST_OF_TRAVEL) continue;
    for (const range of changedBins) {
      const same = places.findIndex(
        (place) => place.side === side && !place.directions.includes(direction) && isOne(place, range),
      );
      if (same < 0) places.push({ ...range, side, directions: [direction] });
      else places[same] = joinedWith(places[same], range, direction);
    }
  }
  return places.sort((a, b) => Math.abs(b.shiftAmps) - Math.abs(a.shiftAmps));
}

function isOne(place: ChangedRange, range: ChangedRange): boolean {
  return (
    place.from < range.to &&
    range.from < place.to &&
    Math.sign(place.shiftAmps) === Math.sign(range.shiftAmps)
  );
}

function joinedWith(place: ChangedPlace, range: ChangedRange, direction: Direction): ChangedPlace {
  return {
    side: place.side,
    directions: [...place.directions, direction],
    from: Math.min(place.from, range.from),
    to: Math.max(place.to, range.to),
    shiftAmps: (place.shiftAmps + range.shiftAmps) / 2,
  };
}
