import { randomUUID } from 'node:crypto';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { fleetOfTests, newFleet, newRoom, send, strokeBody } from './strokeFixture.ts';

const service = serviceOfTests({ worker: false });
const fleet = fleetOfTests(service);

const stroke = (more: object = {}) => strokeBody(fleet.roomId, 0, 9, { key: randomUUID(), ...more });

async function strokesStored(): Promise<number> {
  const { rows } = await service.pool.query('select count(*)::integer as n from strokes');
  return rows[0].n;
}

describe('one stroke', () => {
  test('is stored, and the same key again is a duplicate', async () => {
    const body = stroke();
    const first = await send(service, fleet.loggerToken, body);
    expect(first.status).toBe(200);
    const [{ strokeId }] = first.body.results;
    expect(first.body).toEqual({ results: [{ key: body.key, strokeId, outcome: 'stored' }] });
    const again = await send(service, fleet.loggerToken, { ...body, ambientC: 3 });
    expect(again.body).toEqual({ results: [{ key: body.key, strokeId, outcome: 'duplicate' }] });
    const read = await service.as(fleet.token, 'GET', `/strokes/${strokeId}`);
    expect(read.body).toMatchObject({
      id: strokeId,
      key: body.key,
      loggerId: fleet.loggerId,
      roomId: fleet.roomId,
      direction: 'extend',
      startedAt: body.startedAt,
      sides: body.sides.map(({ side, rateHz }) => ({ side, rateHz })),
      hasSupply: false,
      supply: null,
      ambientC: null,
      excluded: false,
      note: null,
      analysis: null,
    });
  });

  test('tells at what rate each side and the supply were sent, and of times that they were', async () => {
    const body = stroke();
    const [front, rear] = body.sides;
    const t = rear.amps.map((_, i) => i / rear.rateHz);
    const sides = [front, { side: rear.side, t, amps: rear.amps }];
    const sent = { ...body, sides, supply: { rateHz: 5, volts: [12.8, 12.3, 12.4] } };
    const { results } = (await send(service, fleet.loggerToken, sent)).body;
    const read = await service.as(fleet.token, 'GET', `/strokes/${results[0].strokeId}`);
    expect(read.body.sides).toEqual([{ side: 'front', rateHz: front.rateHz }, { side: 'rear' }]);
    expect([read.body.hasSupply, read.body.supply]).toEqual([true, { rateHz: 5 }]);
  });

  test('sent again as what nobody could read is the duplicate that its key says, for its sender alone', async () => {
    const body = stroke();
    const other = stroke();
    const [first] = (await send(service, fleet.loggerToken, body)).body.results;
    const duplicate = { key: body.key, strokeId: first.strokeId, outcome: 'duplicate' };
    for (const broken of [
      { ...body, sides: [] },
      { key: body.key },
      { ...body, startedAt: 'today', more: 1 },
    ]) {
      expect((await send(service, fleet.loggerToken, broken)).body).toEqual({ results: [duplicate] });
      const { results } = (await send(service, fleet.loggerToken, [{ key: 'new' }, broken, other])).body;
      expect(results[0]).toMatchObject({ key: 'new', strokeId: null, outcome: 'rejected' });
      expect(results[1]).toEqual(duplicate);
      expect((await send(service, fleet.token, broken)).status).toBe(422);
    }
    const both = (await send(service, fleet.loggerToken, [other, { ...other, sides: 'none' }])).body.results;
    expect(both.map(({ outcome }: { outcome: string }) => outcome)).toEqual(['duplicate', 'duplicate']);
    await service.as(fleet.token, 'DELETE', `/strokes/${first.strokeId}`);
    expect((await send(service, fleet.loggerToken, { key: body.key })).body.results).toEqual([duplicate]);
    expect((await send(service, fleet.loggerToken, { key: 'never sent' })).status).toBe(422);
  });

  test('sent twenty times at once is stored once', async () => {
    const body = stroke();
    const answers = await Promise.all(
      Array.from({ length: 20 }, () => send(service, fleet.loggerToken, body)),
    );
    const results = answers.map((answer) => answer.body.results[0]);
    expect(results.filter((result) => result.outcome === 'stored')).toHaveLength(1);
    expect(results.filter((result) => result.outcome === 'duplicate')).toHaveLength(19);
    expect(new Set(results.map((result) => result.strokeId)).size).toBe(1);
  });

  test('of another sender with the same key is another stroke', async () => {
    const body = stroke();
    const byLogger = await send(service, fleet.loggerToken, body);
    const byPerson = await send(service, fleet.token, body);
    expect(byPerson.body.results[0].outcome).toBe('stored');
    expect(byPerson.body.results[0].strokeId).not.toBe(byLogger.body.results[0].strokeId);
  });

  test('is taken compressed', async () => {
    const answer = await service.request('POST', '/strokes', {
      token: fleet.loggerToken,
      body: gzipSync(JSON.stringify(stroke())),
      headers: { 'content-encoding': 'gzip' },
    });
    expect(answer.body.results[0].outcome).toBe('stored');
  });
});

describe('with an Idempotency-Key', () => {
  const keyed = (body: object, key: string) =>
    service.request('POST', '/strokes', {
      token: fleet.loggerToken,
      body,
      headers: { 'idempotency-key': key },
    });

  test('the first answer comes again, also when many are sent at once', async () => {
    const [body, key] = [stroke(), randomUUID()];
    const answers = await Promise.all(Array.from({ length: 15 }, () => keyed(body, key)));
    expect(new Set(answers.map((answer) => answer.text)).size).toBe(1);
    expect(answers[0].body.results[0].outcome).toBe('stored');
    expect((await keyed(body, randomUUID())).body.results[0].outcome).toBe('duplicate');
  });

  test('the key with another body gets the first answer, and stores nothing', async () => {
    const [key, other] = [randomUUID(), stroke()];
    const first = await keyed(stroke(), key);
    const answer = await keyed(other, key);
    expect([answer.status, answer.text]).toEqual([200, first.text]);
    expect(answer.headers.get('idempotency-replayed')).toBe('true');
    expect((await keyed(other, randomUUID())).body.results[0].outcome).toBe('stored');
  });
});

describe('a batch', () => {
  test.each([20, 900])('with a field nested %i deep in one stroke stores the other', async (deep) => {
    const [bad, good] = [stroke(), stroke()];
    const text = `[${JSON.stringify(bad).slice(0, -1)},"extra":${'['.repeat(deep)}${']'.repeat(deep)}},${JSON.stringify(good)}]`;
    const keyed = { 'content-type': 'application/json', 'idempotency-key': randomUUID() };
    const answer = await service.request('POST', '/strokes', {
      token: fleet.loggerToken,
      body: Buffer.from(text),
      headers: keyed,
    });
    expect(answer.body.results, answer.text).toMatchObject([
      { key: bad.key, outcome: 'rejected', problem: { errors: [{ pointer: '/extra' }] } },
      { key: good.key, outcome: 'stored' },
    ]);
  });

  test('is answered in the order sent, the same key twice included', async () => {
    const [a, b] = [stroke(), stroke()];
    const answer = await send(service, fleet.loggerToken, [a, { ...b, ambientC: 400 }, a, b, 17]);
    expect(answer.status).toBe(200);
    const results = answer.body.results;
    expect(results.map((result: { outcome: string }) => result.outcome)).toEqual([
      'stored',
      'rejected',
      'duplicate',
      'stored',
      'rejected',
    ]);
    expect(results[2].strokeId).toBe(results[0].strokeId);
    expect(results[1]).toMatchObject({
      key: b.key,
      strokeId: null,
      problem: { status: 422, errors: [{ pointer: '/ambientC' }] },
    });
    expect(results[4]).toMatchObject({ key: null, problem: { errors: [{ pointer: '' }] } });
  });

  test('does not wait for one whose JSON names a prototype', async () => {
    const spoilt = JSON.stringify(stroke()).replace('{', '{"__proto__":{"admin":true},');
    const body = `[${spoilt},${JSON.stringify(stroke())}]`;
    const answer = await service.as(fleet.loggerToken, 'POST', '/strokes', body);
    expect(answer.body.results).toMatchObject([
      { outcome: 'rejected', problem: { errors: [{ pointer: '/__proto__' }] } },
      { outcome: 'stored' },
    ]);
  });

  test('overlapping batches in opposite orders, all at once, store each stroke once', async () => {
    const strokes = Array.from({ length: 40 }, () => stroke());
    const before = await strokesStored();
    const answers = await Promise.all(
      Array.from({ length: 12 }, (_, i) =>
        send(service, fleet.loggerToken, i % 2 ? strokes : strokes.toReversed()),
      ),
    );
    const results = answers.flatMap((answer) => answer.body.results);
    expect(results.filter((result) => result.outcome === 'stored')).toHaveLength(40);
    expect(results.filter((result) => result.outcome === 'duplicate')).toHaveLength(11 * 40);
    expect(await strokesStored()).toBe(before + 40);
  });

  test('of 500 is stored, of 501 refused', async () => {
    const small = (i: number) => ({
      ...stroke({ key: `many ${i}` }),
      sides: [{ side: 'front', rateHz: 50, amps: [1, 2] }],
    });
    const many = Array.from({ length: 501 }, (_, i) => small(i));
    expect((await send(service, fleet.loggerToken, many)).status).toBe(422);
    const answer = await send(service, fleet.loggerToken, many.slice(1));
    expect(answer.body.results).toHaveLength(500);
    expect(new Set(answer.body.results.map((r: { outcome: string }) => r.outcome))).toEqual(
      new Set(['stored']),
    );
  });
});

describe('a room that is not to be sent to', () => {
  const problemOf = async (roomId: string, token: string) => {
    const answer = await send(service, token, stroke({ roomId, key: 'elsewhere' }));
    expect(answer.status).toBe(200);
    return answer.body.results[0];
  };

  test('gets the same answer whether it exists or not', async () => {
    const stranger = await service.newAccount();
    const theirs = await newFleet(service, stranger.token);
    const otherCoach = await newFleet(service, fleet.token);
    const missing = await problemOf(randomUUID(), fleet.loggerToken);
    expect(missing).toMatchObject({
      outcome: 'rejected',
      strokeId: null,
      problem: { errors: [{ pointer: '/roomId' }] },
    });
    expect(await problemOf(theirs.roomId, fleet.loggerToken)).toEqual(missing);
    expect(await problemOf(otherCoach.roomId, fleet.loggerToken)).toEqual(missing);
    expect(await problemOf('no id at all', fleet.loggerToken)).toEqual(missing);
    expect(await problemOf(theirs.roomId, fleet.token)).toEqual(missing);
    expect((await problemOf(otherCoach.roomId, fleet.token)).outcome).toBe('stored');
  });

  test('does not hold back the others, nor does a side that the room lacks', async () => {
    const sides = [{ side: 'attic', rateHz: 50, amps: [1, 2] }];
    const batch = [stroke({ roomId: randomUUID() }), stroke({ sides }), stroke()];
    const answer = await send(service, fleet.loggerToken, batch);
    const pointers = answer.body.results.map(
      (result: { problem?: { errors: { pointer: string }[] } }) => result.problem?.errors[0].pointer,
    );
    expect(pointers).toEqual(['/roomId', '/sides/0/side', undefined]);
  });

  test('in one request is answered with the same problem, whosever it is', async () => {
    const others = await newFleet(service, (await service.newAccount()).token);
    const batch = [randomUUID(), others.roomId, 'no id at all'].map((roomId) => stroke({ roomId }));
    const { body } = await send(service, fleet.loggerToken, batch);
    const [missing, ...rest] = body.results.map((result: { problem: object }) => result.problem);
    expect(missing).toMatchObject({ errors: [{ pointer: '/roomId' }] });
    expect(rest).toEqual([missing, missing]);
  });

  test('a stroke that was stored before stays a duplicate when its room is gone from the sender', async () => {
    const room = await newRoom(service, fleet.token, fleet.coachId);
    const body = stroke({ roomId: room });
    const first = await send(service, fleet.loggerToken, body);
    const again = await send(service, fleet.loggerToken, { ...body, roomId: randomUUID() });
    expect(again.body.results[0]).toMatchObject({
      outcome: 'duplicate',
      strokeId: first.body.results[0].strokeId,
    });
  });
});

describe('who may send', () => {
  test('nobody without a token', async () => {
    expect((await service.request('POST', '/strokes', { body: stroke() })).status).toBe(401);
  });

  test('a technician, but no owner', async () => {
    const dealer = await service.newAccount();
    const theirs = await newFleet(service, dealer.token);
    const body = stroke({ roomId: theirs.roomId });
    const owner = await service.newMember(dealer, 'owner');
    expect((await send(service, owner.token, body)).status).toBe(403);
    const technician = await service.newMember(dealer, 'technician');
    expect((await send(service, technician.token, body)).body.results[0].outcome).toBe('stored');
  });

  test('a logger reads nothing', async () => {
    const token = fleet.loggerToken;
    for (const path of [`/rooms/${fleet.roomId}/strokes`, '/warnings', '/overview', '/measures']) {
      expect((await service.as(token, 'GET', path)).status, path).toBe(401);
    }
  });
});

describe('a body that is none changes nothing and is no fault of the service', () => {
  const raw = (body: string | Uint8Array, headers: Record<string, string> = {}) =>
    service.request('POST', '/strokes', { token: fleet.loggerToken, body, headers });
  const asText = () => JSON.stringify(stroke());

  test.each<[string, number, () => Promise<{ status: number; headers: Headers }>]>([
    ['half a document', 422, () => raw(asText().slice(0, 500))],
    ['empty', 422, () => raw('')],
    ['an empty array', 422, () => raw('[]')],
    ['null', 422, () => raw('null')],
    ['NaN, which JSON cannot say', 422, () => raw(asText().replace('"amps":[', '"amps":[NaN,'))],
    ['infinity by overflow', 422, () => raw(asText().replace('"amps":[', '"amps":[1e999,'))],
    ['a prototype', 422, () => raw(asText().replace('{', '{"__proto__":{"admin":true},'))],
    [
      'bytes that are not UTF-8',
      422,
      () => raw(Buffer.from(asText().replace('front', 'fr\u00f6nt'), 'latin1')),
    ],
    ['text', 415, () => raw('hello', { 'content-type': 'text/plain' })],
    ['a form', 415, () => raw('key=1', { 'content-type': 'application/x-www-form-urlencoded' })],
    ['broken gzip', 422, () => raw('not gzip', { 'content-encoding': 'gzip' })],
    ['half of a gzip', 422, () => raw(gzipSync(asText()).subarray(0, 300), { 'content-encoding': 'gzip' })],
    ['another compression', 415, () => raw(asText(), { 'content-encoding': 'br' })],
    ['33 MiB', 413, () => raw(' '.repeat(33 * 1024 * 1024))],
    ['33 MiB of gzip', 413, () => raw(gzipSync(Buffer.alloc(33 << 20, 32)), { 'content-encoding': 'gzip' })],
  ])('%s', async (_name, status, sent) => {
    const before = await strokesStored();
    const answer = await sent();
    expect(answer.status).toBe(status);
    expect(answer.headers.get('content-type')).toContain('application/problem+json');
    expect(await strokesStored()).toBe(before);
  });

  test.each<[string, () => object, string]>([
    [
      'times that do not rise',
      () => ({ sides: [{ side: 'front', t: [0, 1, 1], amps: [1, 2, 3] }] }),
      '/sides/0/t/2',
    ],
    [
      '200,001 samples',
      () => ({ sides: [{ side: 'front', rateHz: 50, amps: new Array(200_001).fill(1) }] }),
      '/sides/0/amps',
    ],
    ['a date that is none', () => ({ startedAt: '2026-02-30T00:00:00Z' }), '/startedAt'],
    ['an unknown direction', () => ({ direction: 'up' }), '/direction'],
    ['a key of 201 characters', () => ({ key: 'k'.repeat(201) }), '/key'],
    ['a key with U+0000', () => ({ key: 'a\0' }), '/key'],
  ])('%s', async (_name, more, pointer) => {
    const before = await strokesStored();
    const answer = await send(service, fleet.loggerToken, stroke(more()));
    expect(answer.status).toBe(422);
    expect(answer.body.errors[0].pointer).toBe(pointer);
    expect(await strokesStored()).toBe(before);
  });
});
