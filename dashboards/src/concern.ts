import type { CoachOverview, OverviewRoom, Verdict } from './api/types.ts';

/** The most worrying first. A room without an answer asks for more than one that is merely learning. */
const ORDER: readonly Verdict[] = ['stop', 'service', 'watch', 'unknown', 'learning', 'clear'];

const rank = (verdict: Verdict): number => ORDER.indexOf(verdict);

export function byConcern(rooms: readonly OverviewRoom[]): OverviewRoom[] {
  return [...rooms].sort((a, b) => rank(a.verdict) - rank(b.verdict) || b.openWarnings - a.openWarnings);
}

/** A coach counts as its most worrying room; one without rooms comes last. */
export function coachesByConcern(coaches: readonly CoachOverview[]): CoachOverview[] {
  const worst = (coach: CoachOverview) => Math.min(ORDER.length, ...coach.rooms.map((r) => rank(r.verdict)));
  const warnings = (coach: CoachOverview) => coach.rooms.reduce((n, r) => n + r.openWarnings, 0);
  return [...coaches].sort((a, b) => worst(a) - worst(b) || warnings(b) - warnings(a));
}

export const asksForWork = (room: OverviewRoom): boolean =>
  room.verdict === 'stop' || room.verdict === 'service';
