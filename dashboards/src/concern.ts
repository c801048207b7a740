import type { OverviewRoom, Verdict } from './api/types.ts';

/** The most worrying first, as the service orders the coaches. A room without an answer asks for more than one that is merely learning. */
export const VERDICT_ORDER: readonly Verdict[] = ['stop', 'service', 'watch', 'unknown', 'learning', 'clear'];

const rank = (verdict: Verdict): number => VERDICT_ORDER.indexOf(verdict);

export function byConcern(rooms: readonly OverviewRoom[]): OverviewRoom[] {
  return [...rooms].sort((a, b) => rank(a.verdict) - rank(b.verdict) || b.openWarnings - a.openWarnings);
}

/** How many rooms ask for work. */
export const asksFor = (rooms: Readonly<Record<Verdict, number>>): number => rooms.stop + rooms.service;

/** Whether something is wrong with a room that has such a verdict. */
export const isTrouble = (verdict: Verdict): boolean =>
  verdict === 'stop' || verdict === 'service' || verdict === 'watch';
