import { otherWay } from '../../trace.ts';
import type { FindingContext } from '../finding.ts';
import { isSurelyShort } from './shortSigns.ts';
import type { TravelMade } from './travelMade.ts';

/** Strokes in a row are as short as the first of them while they lack this part of what it did: a guess, no source. */
const AS_SHORT_PART = 0.5;
/** A stroke that lacks less than this part of what another does is whole beside it. A guess, no source. */
const WHOLE_PART = 1 / 3;

/** Whether a stroke that took such a part of its time is whole beside one that is short by so much: then it did not stop there. */
export function isWholeBeside(part: number, shortBy: number): boolean {
  return -Math.log(part) < WHOLE_PART * shortBy;
}

/**
 * Remembers which way the room went when it first ended early. The way back from there is as short, and may seem shorter on a
 * stronger supply that nobody recorded; but it comes after.
 */
export function noteFirstShort(context: FindingContext, made: TravelMade, shortBy: number): void {
  const { travel } = context.state;
  if (travel.began !== null && shortBy > AS_SHORT_PART * travel.began.shortBy) return;
  const isFirst = isSurelyShort(made, shortBy) && followsWhole(context, shortBy);
  travel.began = isFirst ? { direction: context.direction, shortBy } : null;
}

/** Whether the stroke before it went the other way, was read, and went all of it. */
function followsWhole({ state: { travel }, direction }: FindingContext, shortBy: number): boolean {
  const isBack = travel.direction === otherWay(direction) && !travel.followsUnread && !travel.leftBehind;
  return isBack && isWholeBeside(travel.part, shortBy);
}
