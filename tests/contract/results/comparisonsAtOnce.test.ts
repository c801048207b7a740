import pg from 'pg';
import { expect, onTestFinished, test } from 'vitest';
import { compareSpans } from '../../../analysis/compare/compareSpans.ts';
import type { StrokeEvent } from '../../../analysis/history.ts';
import { Comparer } from '../../../server/results/comparing/comparer.ts';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { ROOM } from '../../unit/analysis/support/handMade.ts';
import { strokeEvent } from '../../unit/analysis/support/strokeEvents.ts';
import { newFleet } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
const dealer = dealerOfTests(service);

const BEFORE = Array.from({ length: 30 }, (_, index) => strokeEvent(index, ROOM, 1));
const AFTER = Array.from({ length: 30 }, (_, index) =>
  strokeEvent(30 + index, ROOM, 1, { factors: [0.8, 0.8] }),
);
const ASKED = { before: BEFORE, after: AFTER, room: ROOM };

function newComparer(): Comparer {
  const comparer = new Comparer();
  onTestFinished(() => comparer.stop());
  return comparer;
}

test('a comparison goes on beside the thread that serves, which has turns for others meanwhile', async () => {
  const comparer = newComparer();
  let hadTurn = false;
  setImmediate(() => {
    hadTurn = true;
  });
  const comparison = await comparer.inTurn('a person', (compare) => compare(ASKED));
  expect(hadTurn).toBe(true);
  expect(comparison).toEqual(compareSpans(BEFORE, AFTER, ROOM));
});

test('one that fails is told to who asked, and the next goes on', async () => {
  const comparer = newComparer();
  // What the database holds is written by this program alone.
  const broken = [{ ...BEFORE[0], analysis: null }] as unknown as StrokeEvent[];
  const failing = comparer.inTurn('a person', (compare) => compare({ ...ASKED, before: broken }));
  await expect(failing).rejects.toThrow(TypeError);
  const next = await comparer.inTurn('a person', (compare) => compare(ASKED));
  expect(next.sentence).toBe(compareSpans(BEFORE, AFTER, ROOM).sentence);
});

test('whoever asks for more than four at once is asked to come again', async () => {
  const { roomId } = await newFleet(service, dealer.token);
  const spans =
    'beforeFrom=2020-01-01T00:00:00Z&beforeTo=2021-01-01T00:00:00Z&afterFrom=2021-01-01T00:00:00Z';
  const path = `/rooms/${roomId}/comparison?${spans}&afterTo=2022-01-01T00:00:00Z`;
  const ask = () => service.as(dealer.token, 'GET', path);
  const other = new pg.Client(service.databaseUrl);
  await other.connect();
  onTestFinished(() => other.end());
  await other.query('begin; lock table strokes in access exclusive mode');
  const refused: Awaited<ReturnType<typeof ask>>[] = [];
  const asked = Array.from({ length: 7 }, async () => {
    const answer = await ask();
    if (answer.status === 429) refused.push(answer);
    if (refused.length === 3) await other.query('rollback');
    return answer.status;
  });
  expect((await Promise.all(asked)).sort()).toEqual([200, 200, 200, 200, 429, 429, 429]);
  expect(refused.map(({ headers }) => headers.get('retry-after'))).toEqual(['10', '10', '10']);
  expect((await ask()).status).toBe(200);
});
