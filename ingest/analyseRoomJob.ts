/** The queue's name for the work of bringing one room's results up to date; its payload names account and room. */
export const ANALYSE_ROOM = 'analyse-room';

export interface AnalyseRoomPayload {
  readonly accountId: string;
  readonly roomId: string;
}

/**
 * SQL that queues a room's analysis for each row of `source` (with `account_id` and `room_id`), once however often it
 * is asked for: one call for all, in the order of rooms, so that two senders never wait for each other in a ring.
 * A job already under way does not count, as it may have read the room before the change.
 */
export function queueAnalysisOf(source: string): string {
  return `select count(*) as queued from (
    select graphile_worker.add_jobs(array_agg((
      '${ANALYSE_ROOM}', json_build_object('accountId', account_id, 'roomId', room_id), null::text, null::timestamptz,
      null::smallint, '${ANALYSE_ROOM}/' || room_id, null::smallint, null::text[]
    )::graphile_worker.job_spec order by account_id, room_id))
    from ${source} having count(*) > 0
  ) jobs`;
}
