import type { Direction } from '../../analysis/trace.ts';
import type { Severity } from '../../migrations/columns.ts';
import { atLeast } from '../results/severityOrder.ts';
import type { WarningEvent } from '../schemas/webhook.ts';

/** A warning that comes under no id at all any more is gone once it stayed away for so long. */
export const GONE_AFTER_MS = 86_400_000;

/** By what a warning is known again. */
interface Known {
  readonly warningId: string;
  readonly kind: string;
  readonly side: string | null;
  readonly direction: Direction | null;
  readonly openedAt: Date;
  readonly clearedAt: Date | null;
}

/** A warning of the room as it stands. */
export interface Standing extends Known {
  readonly severity: Severity;
}

/** What was told of a warning: `severity` is the highest, `revision` counts the tellings. */
export interface Told extends Standing {
  readonly open: boolean;
  readonly revision: number;
  readonly missingSince: Date | null;
}

/** Something to tell. `standing` is null where the warning no longer follows from the history. */
export interface News {
  readonly event: WarningEvent;
  readonly told: Told;
  readonly standing: Standing | null;
  /** Among all that was ever told of the room: no two have the same. */
  readonly number: number;
}

interface Compared {
  /** What was told once the news are. */
  readonly told: readonly Told[];
  readonly news: readonly News[];
  /** When to look again for what stays away; null: nothing does. */
  readonly lookAgainAt: Date | null;
}

/**
 * Compares the warnings of a room with what was told of them. Knows a warning again by its id, else, where nothing
 * stands under the id that was told, by kind, side, direction and time in common: a late stroke moves its opening.
 */
export function compareTold(standing: readonly Standing[], told: readonly Told[], now: Date): Compared {
  const ids = new Set(standing.map(({ warningId }) => warningId));
  const left = new Map(told.map((one) => [one.warningId, one]));
  const after: Told[] = [];
  const news: News[] = [];
  const toldSoFar = told.reduce((sum, { revision }) => sum + revision, 0);
  const tell = (one: Omit<News, 'number'>) => news.push({ ...one, number: toldSoFar + news.length + 1 });
  const take = (known: Told | undefined): Told | undefined => {
    if (known !== undefined) left.delete(known.warningId);
    return known;
  };
  // Those known by their id first: nothing else may be taken for them.
  const inOrder = [...standing].sort((a, b) => Number(left.has(b.warningId)) - Number(left.has(a.warningId)));
  for (const one of inOrder) {
    const known =
      take(left.get(one.warningId)) ??
      take([...left.values()].find((other) => !ids.has(other.warningId) && isSame(other, one)));
    const next = known === undefined ? firstTime(one) : again(one, known);
    if (next === null) continue;
    after.push(next.told);
    if (next.event !== null) tell({ event: next.event, told: next.told, standing: one });
  }
  const away: Date[] = [];
  for (const one of left.values()) {
    if (!one.open) after.push(one);
    else {
      const missingSince = one.missingSince ?? now;
      const goneAt = new Date(missingSince.getTime() + GONE_AFTER_MS);
      if (goneAt <= now) {
        const gone = { ...one, open: false, clearedAt: now, missingSince, revision: one.revision + 1 };
        after.push(gone);
        tell({ event: 'warning.cleared', told: gone, standing: null });
      } else {
        after.push({ ...one, missingSince });
        away.push(goneAt);
      }
    }
  }
  const lookAgainAt = away.length === 0 ? null : new Date(Math.min(...away.map((at) => at.getTime())));
  return { told: after, news, lookAgainAt };
}

interface Next {
  readonly told: Told;
  readonly event: News['event'] | null;
}

/** What came and went before anybody was told is no news. */
function firstTime(one: Standing): Next | null {
  if (one.clearedAt !== null) return null;
  return { told: { ...one, open: true, revision: 1, missingSince: null }, event: 'warning.opened' };
}

function again(one: Standing, known: Told): Next {
  const isOpen = one.clearedAt === null;
  const same: Told = { ...known, ...one, severity: known.severity, missingSince: null };
  const told = (change: Partial<Told>, event: News['event']): Next => ({
    told: { ...same, ...change, revision: known.revision + 1 },
    event,
  });
  if (isOpen && !known.open) return told({ open: true, severity: one.severity }, 'warning.opened');
  if (!isOpen && known.open) return told({ open: false }, 'warning.cleared');
  if (isOpen && !atLeast(known.severity, one.severity))
    return told({ severity: one.severity }, 'warning.worse');
  return { told: same, event: null };
}

function isSame(told: Told, one: Standing): boolean {
  return (
    told.kind === one.kind &&
    told.side === one.side &&
    told.direction === one.direction &&
    told.openedAt <= (one.clearedAt ?? NEVER) &&
    one.openedAt <= (told.clearedAt ?? NEVER)
  );
}

const NEVER = new Date(8.64e15);
