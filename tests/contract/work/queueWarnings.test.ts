import { randomUUID } from 'node:crypto';
import { beforeEach, expect, test } from 'vitest';
import type { Warning } from '../../../analysis/warning.ts';
import { writeWarnings } from '../../../server/work/writing/writeWarnings.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { dayAt, type Fleet, newFleet } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
let fleet: Fleet;
let accountId: string;

beforeEach(async () => {
  fleet = await newFleet(service, await service.signIn());
  const { rows } = await service.pool.query('select account_id from rooms where id = $1', [fleet.roomId]);
  accountId = rows[0].account_id;
});

function warning(day: number, more: Partial<Warning> = {}): Warning {
  return {
    id: randomUUID(),
    kind: 'rising-draw',
    severity: 'watch',
    side: 'front',
    direction: null,
    position: null,
    pattern: null,
    openedAtMs: Date.parse(dayAt(day)),
    clearedAtMs: null,
    firstStrokeId: randomUUID(),
    latestStrokeId: randomUUID(),
    headline: 'The front side draws more than it did.',
    evidence: { risePercent: 20 },
    checks: ['Look at the rack.'],
    cautions: ['Keep everyone out of the travel.'],
    ...more,
  };
}

/** What a fold would hand over that began after so many days; null: at the beginning. */
async function write(afterDay: number | null, ...warnings: Warning[]): Promise<void> {
  const from = afterDay === null ? null : { at: new Date(dayAt(afterDay)), events: 1 };
  await service.db.transaction().execute((trx) =>
    writeWarnings(trx, [
      {
        room: { accountId, roomId: fleet.roomId },
        folded: { from, warnings: new Map(warnings.map((one) => [one.id, one])) },
      },
    ]),
  );
}

async function read() {
  const { body } = await service.as(fleet.token, 'GET', `/rooms/${fleet.roomId}/warnings`);
  return body.items as { id: string; state: string; acknowledgement: { note: string } | null }[];
}
const acknowledge = (id: string, note: string) =>
  service.as(fleet.token, 'POST', `/warnings/${id}/acknowledgement`, { note });

test('a warning is updated, not repeated, and keeps its acknowledgement', async () => {
  const first = warning(3);
  await write(null, first);
  await acknowledge(first.id, 'seen');
  await write(5, { ...first, severity: 'service', latestStrokeId: randomUUID() });
  expect(await read()).toMatchObject([
    { id: first.id, severity: 'service', state: 'acknowledged', acknowledgement: { note: 'seen' } },
  ]);
  await write(6, { ...first, clearedAtMs: Date.parse(dayAt(9)) });
  expect(await read()).toMatchObject([{ state: 'cleared', clearedAt: dayAt(9) }]);
});

test('what no longer follows from the history is gone, what lies before the work stays', async () => {
  const [early, late] = [warning(3), warning(8, { kind: 'stall-spike' })];
  await write(null, early, late);
  await write(5);
  expect((await read()).map((one) => one.id)).toEqual([early.id]);
  await write(null);
  expect(await read()).toEqual([]);
});

test.each<[string, Partial<Warning>, boolean]>([
  ['the same kind and side that overlaps takes it over', {}, true],
  ['another side does not', { side: 'rear' }, false],
  ['another kind does not', { kind: 'heavy-room' }, false],
  [
    'one that ended before does not',
    { openedAtMs: Date.parse(dayAt(0)), clearedAtMs: Date.parse(dayAt(2)) },
    false,
  ],
])('an acknowledgement: %s', async (_name, more, taken) => {
  const old = warning(3);
  await write(null, old);
  await acknowledge(old.id, 'ordered a gear');
  await write(null, warning(4, more));
  const [now] = await read();
  expect(now.id).not.toBe(old.id);
  expect(now.acknowledgement?.note ?? null).toBe(taken ? 'ordered a gear' : null);
});
