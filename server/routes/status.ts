import { personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { roomStatuses } from '../results/roomStatuses.ts';
import { ByIdParams } from '../schemas/common.ts';
import { RoomStatus } from '../schemas/results.ts';
import { findRoom } from '../things/rooms.ts';

export async function statusRoutes(app: App): Promise<void> {
  app.get(
    '/api/v1/rooms/:id/status',
    {
      schema: {
        tags: ['results'],
        summary: "A room's verdict",
        params: ByIdParams,
        response: { 200: RoomStatus },
      },
    },
    async (request) => {
      const { accountId, visit } = personOf(request);
      const room = await findRoom(request.db, accountId, request.params.id);
      const [status] = await roomStatuses(request.db, { accountId, byGrant: visit !== undefined }, [room]);
      return status;
    },
  );
}
