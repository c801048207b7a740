import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { openLink } from '../../support/loggerLink.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests } from '../strokes/strokeFixture.ts';
import { sendAs, strokeOf, traceOf } from './formatsFixture.ts';

const readme = await readFile(new URL('../../../ingest/README.md', import.meta.url), 'utf8');
const block = (language: string) =>
  new RegExp(`\`\`\`${language}\n([\\s\\S]*?)\`\`\``).exec(readme)?.[1] ?? '';
const ROOM_IN_README = '00000000-0000-7000-8000-000000000000';
const AMPS = [0.02, 14.8, 9.1];

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

async function expectStored(results: { key: string; strokeId: string; outcome: string }[], key: string) {
  expect(results).toEqual([{ key, strokeId: expect.any(String), outcome: 'stored' }]);
  const stroke = await strokeOf(service, fleet, results[0].strokeId);
  expect(stroke).toMatchObject({ direction: 'extend', startedAt: '2026-05-02T16:20:11.000Z' });
  const trace = await traceOf(service, fleet, results[0].strokeId);
  expect(trace.sides).toMatchObject([{ side: 'front', amps: AMPS }]);
}

test('the requests of the README do what it says', async () => {
  const here = block('sh')
    .replace(/^url=.*$/m, `url=${service.url}`)
    .replace(/^token=.*$/m, `token='${fleet.loggerToken}'`)
    .replace(/^room=.*$/m, `room='${fleet.roomId}'`);
  const { stdout } = await promisify(execFile)('bash', ['-euo', 'pipefail', '-c', here]);
  const answers = stdout.replaceAll('}{', '}\n{').trim().split('\n');
  expect(answers).toHaveLength(2);
  await expectStored(JSON.parse(answers[0]).results, 'stroke-17');
  await expectStored(JSON.parse(answers[1]).results, 'stroke-18');
});

test('the bytes of the README are the stroke that it says', async () => {
  const hex = block('cbor').replaceAll(/#.*$/gm, '').replaceAll(/\s/g, '');
  const room = (id: string) => Buffer.from(id).toString('hex');
  expect(hex).toContain(room(ROOM_IN_README));
  const bytes = Buffer.from(hex.replace(room(ROOM_IN_README), room(fleet.roomId)), 'hex');
  const answer = await sendAs(service, fleet, 'application/cbor', bytes);
  await expectStored(answer.body.results, 'stroke-19');
});

test('so is the SenML pack', async () => {
  const pack = block('json').replace('ROOM', fleet.roomId);
  const answer = await sendAs(service, fleet, 'application/senml+json', pack);
  await expectStored(answer.body.results, 'stroke-20');
});

test('the conversation of the README goes as it says', async () => {
  const link = await openLink(service.url, fleet.loggerToken);
  const lines = block('live').trim().replaceAll('ROOM', fleet.roomId).split('\n');
  expect(lines).toHaveLength(11);
  for (const line of lines) {
    const [who, text] = [line.slice(0, 2), line.slice(2)];
    if (who === '> ') link.say(text);
    else expect(await link.next()).toMatchObject(expected(JSON.parse(text)));
  }
  await link.drop();
});

/** Ids are not known beforehand. */
const expected = (answer: object) =>
  'strokeId' in answer ? { ...answer, strokeId: expect.any(String) } : answer;

test('so do the bytes of a frame and of its answer', async () => {
  const [frame, answer] = [...readme.matchAll(/```frame\n([\s\S]*?)```/g)].map(([, text]) =>
    Buffer.from(text.replaceAll(/#.*$/gm, '').replaceAll(/\s/g, ''), 'hex'),
  );
  const link = await openLink(service.url, fleet.loggerToken);
  link.say({
    type: 'begin',
    key: 'stroke-22',
    roomId: fleet.roomId,
    direction: 'extend',
    startedAt: '2026-05-02T16:20:11Z',
    sides: [{ side: 'front', rateHz: 50 }],
  });
  const said = new Promise<Buffer>((resolve) => link.socket.on('message', resolve));
  link.say(frame);
  expect(await said).toEqual(answer);
  link.say({ type: 'end', key: 'stroke-22' });
  const { key, strokeId } = await link.next('stored');
  await expectStored([{ key, strokeId, outcome: 'stored' }], 'stroke-22');
  await link.drop();
});
