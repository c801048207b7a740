import pg from 'pg';
import { expect, onTestFinished, test } from 'vitest';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { untilSomebodyWaits } from '../../support/untilSomebodyWaits.ts';
import { dayAt, newFleet, newService } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
const dealer = dealerOfTests(service);

test.each<[string, (path: string) => Promise<{ status: number }>]>([
  ['moved to another', (path) => service.as(dealer.token, 'PATCH', path, { at: dayAt(20) })],
  ['removed', (path) => service.as(dealer.token, 'DELETE', path)],
])(
  'a service that is moved to a day and %s at once has its room gone through from that day',
  async (_, change) => {
    const fleet = await newFleet(service, dealer.token);
    const path = `/services/${await newService(service, fleet, dayAt(10))}`;
    const [holder, analysis] = [new pg.Client(service.databaseUrl), new pg.Client(service.databaseUrl)];
    await Promise.all([holder.connect(), analysis.connect()]);
    onTestFinished(async () => {
      await Promise.all([holder.end(), analysis.end()]);
    });
    await holder.query('begin');
    const { rows: before } = await holder.query(
      'select revision from room_progress where room_id = $1 for update',
      [fleet.roomId],
    );
    const first = service.as(dealer.token, 'PATCH', path, { at: dayAt(3) });
    await untilSomebodyWaits(holder);
    // In between the room is brought up to date, unless the other change overtook that: so the revision tells the analysis.
    const done = analysis.query(
      `update room_progress set dirty_from = case when revision > $2::bigint + 1 then dirty_from end
       where room_id = $1`,
      [fleet.roomId, before[0].revision],
    );
    await untilSomebodyWaits(holder, 2);
    const second = change(path);
    await untilSomebodyWaits(holder, 3);
    await holder.query('commit');
    expect((await first).status).toBe(200);
    await done;
    expect((await second).status).toBeLessThan(300);
    const { rows } = await holder.query('select dirty_from from room_progress where room_id = $1', [
      fleet.roomId,
    ]);
    expect(rows[0].dirty_from.toISOString()).toBe(dayAt(3));
  },
);
