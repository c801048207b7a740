/** Before any logger of this kind was built: a clock that was never set. */
const EARLIEST = "timestamptz '2015-01-01T00:00:00Z'";
/** A clock further ahead than this was set wrong, whatever its time zone. */
const FURTHEST_AHEAD = "interval '24 hours'";

/** What the sender's clock said, set right by its known offset: SQL, in whole milliseconds as every stroke has. */
function corrected(startedAt: string, offsetS: string): string {
  return `(${startedAt} + round(coalesce(${offsetS}, 0) * 1000) * interval '1 millisecond')`;
}

function canBe(at: string, receivedAt: string): string {
  return `${at} >= ${EARLIEST} and ${at} <= ${receivedAt} + ${FURTHEST_AHEAD}`;
}

/**
 * SQL for the place of a stroke in its room's history: the time that was sent, set right by the logger's offset; where
 * that cannot be, the time of its arrival. The arguments are SQL for the time sent, the offset in seconds or null, and
 * the time of arrival. It follows from the first arrival alone: sending a stroke again moves nothing.
 */
export function placedAt(startedAt: string, offsetS: string, receivedAt: string): string {
  const at = corrected(startedAt, offsetS);
  return `case when ${canBe(at, receivedAt)} then ${at} else date_trunc('milliseconds', ${receivedAt}) end`;
}

/** SQL for `strokes.placed_by` of the same. */
export function placedBy(startedAt: string, offsetS: string, receivedAt: string): string {
  return `case when ${canBe(corrected(startedAt, offsetS), receivedAt)} then 'sender' else 'arrival' end`;
}
