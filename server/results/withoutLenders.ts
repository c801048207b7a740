import type { RoomStatus } from '../schemas/results.ts';

/**
 * A room's status as it is told to whoever sees it by a grant. The rooms that lend it their normal are of coaches that do
 * not exist for that person (contract, section 8), nor does their number: what is borrowed is told, not from how many.
 */
export function withoutLenders(status: RoomStatus): RoomStatus {
  const { borrowed } = status;
  return borrowed === null ? status : { ...status, borrowed: { share: borrowed.share, rooms: null } };
}
