import { percent } from '../format.ts';
import { sideName } from '../sideName.ts';
import { words } from '../words.ts';
import type { SideCourse } from './course.ts';

interface OfRoom {
  /** Whether the room has one side. */
  readonly only: boolean;
  /** Whether the room has a warning: what one stroke says of its normal is no answer to that. */
  readonly inTrouble: boolean;
}

/** What the latest stroke of a side says, rounded as the service rounds it for the room's own sentence. */
export function courseSentence(
  { side, line, latest, beyond }: SideCourse,
  { only, inTrouble }: OfRoom,
): string {
  const say = words.course;
  const who = only || side === null ? say.motor : say.side(sideName(side));
  if (line.points.length === 0) return say.unseen(who);
  if (latest === null) return say.learning(who);
  const off = Math.round(100 * (latest - 1));
  const drew = off === 0 ? say.drewNormal(who) : say.drew(who, percent(Math.abs(off) / 100), off > 0);
  if (beyond) return `${drew} ${say.outside}`;
  return inTrouble ? drew : `${drew} ${say.inside}`;
}
