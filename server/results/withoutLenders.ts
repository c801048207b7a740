import type { RoomStatus } from '../schemas/results.ts';

/** As the analysis says it of a room that is clear by what it borrowed. */
const JUDGED_BY = /^(No trouble found\. Judged by )(?:another room|\d+ rooms)(?= of the same model)/;

/**
 * A room's status as it is told to whoever sees it by a grant. The rooms that lend it their normal are of coaches that do
 * not exist for that person (contract, section 8), and so does their number: what is borrowed is told, not from how many.
 */
export function withoutLenders(status: RoomStatus): RoomStatus {
  if (status.borrowed === null) return status;
  return {
    ...status,
    headline: status.headline.replace(JUDGED_BY, '$1others'),
    borrowed: { share: status.borrowed.share, rooms: null },
  };
}
