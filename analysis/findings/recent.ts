import type { Direction } from '../trace.ts';

/** What is flagged of a stroke: of the room, of a side, of one way, or of a side on one way. `string`: a side's name. */
type About =
  | 'weak-supply'
  | 'eased-room'
  | `low-supply ${Direction}`
  | `short-travel ${Direction}`
  | 'sensor-doubt clock'
  | `${'sensor-doubt' | 'dropped-load' | 'heavy-stretch'} ${string}`
  | `${'dropped-load' | 'heavy-stretch'} ${string} ${Direction}`;

/** Whether something was so on each of the latest strokes that told, oldest first; by what it was about. */
export type RecentFlags = Partial<Record<About, boolean[]>>;

/** How many of the latest strokes are kept. */
const KEPT = 6;

/** Takes one more stroke in and answers the flags of what it is `about`. */
export function flag(recent: RecentFlags, about: About, is: boolean): readonly boolean[] {
  const flags = recent[about] ?? [];
  flags.push(is);
  if (flags.length > KEPT) flags.shift();
  recent[about] = flags;
  return flags;
}

/** The flags as they stand; none before the first stroke that told. */
export function flagsOf(recent: RecentFlags, about: About): readonly boolean[] {
  return recent[about] ?? [];
}

/** At least `count` of the last `of` were so. */
export function isLasting(flags: readonly boolean[], count: number, of: number): boolean {
  return flags.slice(-of).filter(Boolean).length >= count;
}

/** None of the last `count` was so, and there are as many. */
export function isOver(flags: readonly boolean[], count: number): boolean {
  return flags.length >= count && !flags.slice(-count).some(Boolean);
}
