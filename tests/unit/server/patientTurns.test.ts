import { expect, test } from 'vitest';
import { PatientTurns } from '../../../server/limits/patientTurns.ts';

/** Work that goes on until it is let go. */
function held() {
  let letGo = () => {};
  const going = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  return { work: () => going, letGo: () => letGo() };
}

test('so many at once have their turn, the others one after the other', async () => {
  const turns = new PatientTurns(2);
  const begun: number[] = [];
  const works = [0, 1, 2, 3].map(() => held());
  const done = works.map(({ work }, i) =>
    turns.run(() => {
      begun.push(i);
      return work();
    }),
  );
  expect([await turnsTaken(turns), begun]).toEqual([4, [0, 1]]);
  for (const [i, { letGo }] of works.entries()) {
    letGo();
    await done[i];
  }
  expect(begun).toEqual([0, 1, 2, 3]);
});

test('whoever waited too long is told to come again, and the next has its turn', async () => {
  const mostWaitMs = 200;
  const turns = new PatientTurns(1, mostWaitMs);
  const first = held();
  const going = turns.run(first.work);
  const waited = turns.run(() => Promise.resolve('too late'));
  expect(await turnsTaken(turns)).toBe(2);
  // Until the clock has gone on.
  for (const from = performance.now(); performance.now() <= from + mostWaitMs; );
  first.letGo();
  await going;
  await expect(waited).rejects.toMatchObject({ problem: 'too-many-requests' });
  expect(turns.taken).toBe(0);
});

/** Once what can begin has begun. */
async function turnsTaken(turns: PatientTurns): Promise<number> {
  await new Promise(setImmediate);
  return turns.taken;
}
