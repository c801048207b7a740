import { expect, test } from 'vitest';
import { dealerOfTests, serviceOfTests } from '../../support/serviceOfTests.ts';
import { type Fleet, newFleet, send, settled, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests();
const dealer = dealerOfTests(service);
/** What is said of a room's strokes, each other one with a temperature. */
async function trendOf(fleet: Fleet, more: object) {
  const strokes = Array.from({ length: 24 }, (_, day) =>
    strokeBody(fleet.roomId, day, 9, day % 4 < 2 ? more : {}),
  );
  const { results } = (await send(service, fleet.loggerToken, strokes)).body;
  expect(new Set(results.map(({ outcome }: { outcome: string }) => outcome))).toEqual(new Set(['stored']));
  await settled(service, dealer.token, fleet.roomId);
  const path = `/rooms/${fleet.roomId}/trend?measure=runningAmps&direction=extend&side=front`;
  const { points, limits } = (await service.as(dealer.token, 'GET', path)).body;
  return { limits, points: points.map(({ strokeId: _, ...said }: { strokeId: string }) => said) };
}

test('a temperature that cannot be weather is kept as sent, and judged as one that was not recorded', async () => {
  const unrecorded = await trendOf(await newFleet(service, dealer.token), {});
  for (const ambientC of [85, -127])
    expect(await trendOf(await newFleet(service, dealer.token), { ambientC })).toEqual(unrecorded);
  expect(await trendOf(await newFleet(service, dealer.token), { ambientC: 31 })).not.toEqual(unrecorded);

  const fleet = await newFleet(service, dealer.token);
  const [{ strokeId }] = (
    await send(service, fleet.loggerToken, strokeBody(fleet.roomId, 0, 9, { ambientC: 75 }))
  ).body.results;
  const stroke = await service.as(dealer.token, 'GET', `/strokes/${strokeId}`);
  const trace = await service.as(dealer.token, 'GET', `/strokes/${strokeId}/trace`);
  expect([stroke.body.ambientC, trace.body.ambientC]).toEqual([75, 75]);
});

test.each([-273.2, 291, 1e9])('%s is no temperature', async (ambientC) => {
  const fleet = await newFleet(service, dealer.token);
  const [result] = (
    await send(service, fleet.loggerToken, [
      strokeBody(fleet.roomId, 0, 9, { ambientC }),
      strokeBody(fleet.roomId, 1),
    ])
  ).body.results;
  expect(result).toMatchObject({ outcome: 'rejected', problem: { errors: [{ pointer: '/ambientC' }] } });
});
