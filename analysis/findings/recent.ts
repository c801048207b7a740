/** Whether something was so on each of the latest strokes, oldest first; by what it was about. */
export type RecentFlags = Record<string, boolean[]>;

const KEPT = 6;

/** Takes one more stroke in and answers the flags of this key. */
export function flag(recent: RecentFlags, key: string, is: boolean): readonly boolean[] {
  const flags = recent[key] ?? [];
  flags.push(is);
  if (flags.length > KEPT) flags.shift();
  recent[key] = flags;
  return flags;
}

/** At least `count` of the last `of` were so. */
export function isLasting(flags: readonly boolean[], count: number, of: number): boolean {
  return flags.slice(-of).filter(Boolean).length >= count;
}

/** None of the last `count` was so, and there are as many. */
export function isOver(flags: readonly boolean[], count: number): boolean {
  return flags.length >= count && !flags.slice(-count).some(Boolean);
}
