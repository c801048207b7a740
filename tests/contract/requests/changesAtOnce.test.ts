import pg from 'pg';
import { expect, onTestFinished, test } from 'vitest';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { untilSomebodyWaits } from '../../support/untilSomebodyWaits.ts';
import { newRoomOf, type RoomOfModel } from '../work/lentFixture.ts';

const service = serviceOfTests({ worker: false });
const dealer = dealerOfTests(service);

test.each<[string, (room: RoomOfModel) => [change: string, id: string, path: string, body: object]]>([
  [
    'drive of a room',
    ({ roomId }) => [
      `update rooms set drive = 'cable' where id = $1`,
      roomId,
      `/rooms/${roomId}`,
      { drive: 'in-wall' },
    ],
  ],
  [
    'model of a coach',
    ({ coachId }) => [
      `update coaches set model = 'Other' where id = $1`,
      coachId,
      `/coaches/${coachId}`,
      { model: 'Usual' },
    ],
  ],
])(
  'whoever sets the %s back while another changes it has the room gone through anew',
  async (_, changing) => {
    const room = await newRoomOf(service, dealer.token, { model: 'Usual' });
    const [change, id, path, body] = changing(room);
    const other = new pg.Client(service.databaseUrl);
    await other.connect();
    onTestFinished(() => other.end());
    await other.query('begin');
    await other.query(change, [id]);
    const back = service.as(dealer.token, 'PATCH', path, body);
    await untilSomebodyWaits(other);
    await other.query('commit');
    expect((await back).status).toBe(200);
    const { rows } = await other.query(
      'select dirty_from is not null as dirty from room_progress where room_id = $1',
      [room.roomId],
    );
    expect(rows).toEqual([{ dirty: true }]);
  },
);
