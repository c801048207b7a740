import { expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { sendAs } from '../forms/formatsFixture.ts';
import { fleetOfTests, store } from './strokeFixture.ts';

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

const sent = {
  key: 'trace',
  startedAt: '2026-05-02T16:20:11.250+02:00',
  sides: [
    { side: 'front', rateHz: 12.5, amps: [0.1, null, 14.800000000000002, -9.1, 1e-7] },
    { side: 'rear', t: [-0.5, 0, 0.02, 0.041, 1.25], amps: [0.01, 14.5, 9.3, null, 0.30000000000000004] },
  ],
  supply: { rateHz: 10, volts: [12.9, 12.1] },
  ambientC: 18.5,
};

test('the trace is the very numbers that were sent', async () => {
  const [id] = await store(service, fleet, [{ ...sent, roomId: fleet.roomId }]);
  const answer = await service.as(fleet.token, 'GET', `/strokes/${id}/trace`);
  expect(answer.headers.get('content-type')).toContain('application/json');
  expect(answer.body).toEqual({ sides: sent.sides, supply: sent.supply, ambientC: sent.ambientC });
});

test('milliamperes come back as the amperes that they are', async () => {
  const milliamps = [20, 14_800, null, -7, 33_333];
  const sides = [{ side: 'rear', rateHz: 50, milliamps }];
  const stroke = { key: 'milli', roomId: fleet.roomId, startedAt: sent.startedAt, sides };
  const [id] = await store(service, fleet, [stroke]);
  const answer = await service.as(fleet.token, 'GET', `/strokes/${id}/trace`);
  expect(answer.body).toEqual({
    sides: [{ side: 'rear', rateHz: 50, amps: [0.02, 14.8, null, -0.007, 33.333] }],
  });
});

test('sent as the CSV that it is answered in, a stroke is the same again', async () => {
  const sides = [{ side: 'front', t: [0, 0.02, 0.041], amps: [0.1, 14.8, 9.1] }];
  const stroke = { key: 'there', roomId: fleet.roomId, startedAt: sent.startedAt, sides, ambientC: -3.5 };
  const [id] = await store(service, fleet, [stroke]);
  const headers = { accept: 'text/csv' };
  const csv = await service.request('GET', `/strokes/${id}/trace`, { token: fleet.token, headers });
  const query = { roomId: fleet.roomId, key: 'and back', startedAt: sent.startedAt };
  const { body } = await sendAs(service, fleet, 'text/csv', csv.text, query);
  const again = await service.as(fleet.token, 'GET', `/strokes/${body.results[0].strokeId}/trace`);
  expect(again.body).toEqual({ sides, ambientC: -3.5 });
});

test('as CSV, by Accept, with the times of every clock', async () => {
  const [id] = await store(service, fleet, [{ ...sent, key: 'csv', roomId: fleet.roomId }]);
  const answer = await service.request('GET', `/strokes/${id}/trace`, {
    token: fleet.token,
    headers: { accept: 'text/csv, application/json;q=0.5' },
  });
  expect(answer.headers.get('content-type')).toContain('text/csv');
  expect(answer.text.split('\r\n')).toEqual([
    't (s),front (A),rear (A),supply (V),ambient (C)',
    `-0.5,,0.01,,${sent.ambientC}`,
    '0,0.1,14.5,12.9,',
    '0.02,,9.3,,',
    '0.041,,,,',
    '0.08,,,,',
    '0.1,,,12.1,',
    '0.16,14.800000000000002,,,',
    '0.24,-9.1,,,',
    '0.32,1e-7,,,',
    '1.25,,0.30000000000000004,,',
    '',
  ]);
});
