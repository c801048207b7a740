import { expect, test } from 'vitest';
import { GroupCommit } from '../../../ingest/groupCommit.ts';
import { decodeStroke } from '../../../ingest/json/stroke.ts';
import { prepareStroke } from '../../../ingest/storeStrokes.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { newFleet, strokeBody } from './strokeFixture.ts';

const service = serviceOfTests({ worker: false });

test('what the database refuses of one request does not hold back those stored with it', async () => {
  const fleet = await newFleet(service, await service.signIn());
  const { rows } = await service.pool.query('select account_id from rooms where id = $1', [fleet.roomId]);
  const sender = {
    accountId: rows[0].account_id,
    senderId: fleet.loggerId,
    loggerId: fleet.loggerId,
    coachId: fleet.coachId,
  };
  const prepared = [0, 1, 2].map((day) =>
    prepareStroke(sender, decodeStroke(strokeBody(fleet.roomId, day), '')),
  );
  // What no decoder lets pass: text that the column does not take.
  const refused = { ...prepared[1], row: { ...prepared[1].row, key: 'nul \u0000' } };
  let statements = 0;
  const store = new GroupCommit(() => {
    statements++;
    return service.pool;
  });
  const settled = await Promise.allSettled(
    [prepared[0], refused, prepared[2]].map((stroke) => store.store([stroke])),
  );
  expect(settled.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
  expect(settled[2]).toMatchObject({ value: [{ outcome: 'stored' }] });
  // All together first, then each by itself.
  expect(statements).toBe(4);
});
