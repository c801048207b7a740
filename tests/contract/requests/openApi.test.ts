import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { PROBLEMS } from '../../../server/problems.ts';
import { LivePush, LiveRequest } from '../../../server/schemas/live.ts';
import { LinkAnswer, LinkMessage } from '../../../server/schemas/strokesLive.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { newFleet, send } from '../strokes/strokeFixture.ts';

interface Operation {
  readonly operationId?: string;
  readonly summary?: string;
  readonly 'x-messages'?: { readonly sent: { $ref: string }; readonly answered: { $ref: string } };
  readonly security?: readonly object[];
  readonly parameters?: readonly { name: string; in: string; required?: boolean; schema: object }[];
  readonly requestBody?: { content: Record<string, { schema: z.core.JSONSchema.JSONSchema }> };
  readonly responses: Record<
    string,
    { description: string; headers?: object; content?: Record<string, { schema: object }> }
  >;
}
interface Description {
  readonly openapi: string;
  readonly info: { title: string; version: string };
  readonly servers: readonly object[];
  readonly paths: Record<string, Record<string, Operation>>;
  readonly components: { schemas: Record<string, object>; securitySchemes: Record<string, object> };
}

const service = serviceOfTests({ worker: false });
let described: Description;
let operations: { name: string; path: string; method: string; operation: Operation }[];

beforeAll(async () => {
  described = (await service.request('GET', '/api/openapi.json')).body;
  operations = Object.entries(described.paths).flatMap(([path, item]) =>
    Object.entries(item).map(([method, operation]) => ({
      name: `${method.toUpperCase()} ${path}`,
      path,
      method,
      operation,
    })),
  );
});

/** Every object within a document, itself included. */
function* objectsIn(document: unknown): Generator<Record<string, unknown>> {
  if (typeof document !== 'object' || document === null) return;
  // An object that is not null has string keys; what they hold is looked at one by one.
  yield document as Record<string, unknown>;
  for (const inner of Object.values(document)) yield* objectsIn(inner);
}

/** The values that `type` has in the messages of a schema. */
function kindsIn(schema: object): unknown[] {
  const kinds = [...objectsIn(schema)].flatMap(({ properties }) => {
    const { type } = Object(properties);
    return type?.const ?? type?.enum ?? [];
  });
  return [...new Set(kinds)].sort();
}

const isOpen = ({ security }: Operation) => security?.length === 0;

describe('the OpenAPI document', () => {
  test('is version 3.1 and open to everybody', async () => {
    const answer = await service.request('GET', '/api/openapi.json');
    expect([answer.status, answer.headers.get('content-type')]).toEqual([
      200,
      'application/json; charset=utf-8',
    ]);
    expect(described.openapi).toMatch(/^3\.1\./);
    expect(described.info).toMatchObject({ title: 'Slideload', version: expect.any(String) });
  });

  test('names where it is served, and every operation by a name of its own', () => {
    expect(described.servers).toEqual([{ url: '/' }]);
    const ids = operations.map(({ operation }) => operation.operationId);
    expect(new Set(ids).size).toBe(operations.length);
    for (const id of ids) expect(id).toMatch(/^[a-z]+([A-Z][a-z]+)*$/);
    const byName = Object.fromEntries(operations.map(({ name, operation }) => [name, operation.operationId]));
    expect(byName).toMatchObject({
      'POST /api/v1/session': 'signIn',
      'DELETE /api/v1/session': 'signOut',
      'DELETE /api/v1/sessions/{id}': 'deleteSession',
      'GET /api/v1/coaches': 'getCoaches',
      'GET /api/v1/coaches/{id}': 'getCoach',
      'POST /api/v1/coaches/{coachId}/rooms': 'createCoachRoom',
      'PATCH /api/v1/people/{id}': 'patchPerson',
      'GET /api/v1/rooms/{id}/trend': 'getRoomTrend',
      'POST /api/v1/strokes': 'sendStrokes',
      'POST /api/v1/password-resets': 'postPasswordResets',
    });
  });

  test('describes itself and what the process counts, and the address that is too long', async () => {
    const names = operations.map(({ name }) => name);
    expect(names).toContain('GET /api/openapi.json');
    expect(names).toContain('GET /metrics');
    for (const { path, name, operation } of operations) {
      const at = path.replaceAll(/\{\w+\}/g, 'x'.repeat(5000));
      if (at === path) continue;
      expect(Object.keys(operation.responses), name).toContain('414');
    }
    const { status } = await service.request('POST', `/invitations/${'x'.repeat(5000)}`);
    expect(status).toBe(414);
  });

  test('describes every route of the things it is about', () => {
    const names = operations.map(({ name }) => name);
    for (const thing of ['coaches', 'rooms', 'loggers', 'services'])
      for (const method of ['GET', 'PATCH', 'DELETE'])
        expect(names).toContain(`${method} /api/v1/${thing}/{id}`);
    for (const list of [
      '/api/v1/coaches',
      '/api/v1/coaches/{coachId}/rooms',
      '/api/v1/coaches/{coachId}/loggers',
      '/api/v1/rooms/{roomId}/services',
    ])
      for (const method of ['GET', 'POST']) expect(names).toContain(`${method} ${list}`);
    for (const method of ['GET', 'POST', 'DELETE']) expect(names).toContain(`${method} /api/v1/session`);
  });

  test('names the Idempotency-Key of every POST that creates, and CSV where it is answered', () => {
    for (const { name, method, operation } of operations) {
      const isCreating = method === 'post' && '201' in operation.responses && !isOpen(operation);
      const takesStrokes = name === 'POST /api/v1/strokes';
      const names = operation.parameters?.filter((one) => one.in === 'header').map((one) => one.name) ?? [];
      expect(names, name).toEqual(isCreating || takesStrokes ? ['Idempotency-Key'] : []);
      for (const [status, { headers = {} }] of Object.entries(operation.responses))
        expect(Object.keys(headers), `${name} ${status}`).toEqual(
          names.length > 0 && status.startsWith('2') ? ['idempotency-replayed'] : [],
        );
    }
    const { responses } = described.paths['/api/v1/strokes/{id}/trace'].get;
    expect(Object.keys(responses['200'].content ?? {})).toEqual(['application/json', 'text/csv']);
  });

  test.each([
    ['/api/v1/live', 'LiveRequest', LiveRequest, 'LivePush', LivePush, 'personToken'],
    ['/api/v1/strokes/live', 'LinkMessage', LinkMessage, 'LinkAnswer', LinkAnswer, 'loggerToken'],
  ])(
    'describes the WebSocket %s with the schemas of its messages',
    (path, sent, sentBy, answered, answeredBy, token) => {
      const { get } = described.paths[path];
      expect(Object.keys(get.responses)).toEqual(expect.arrayContaining(['101', '401', '426']));
      expect(get.responses['101'].content).toBeUndefined();
      expect(get.security).toEqual([{ [token]: [] }, {}]);
      expect(get['x-messages']).toEqual({
        sent: { $ref: `#/components/schemas/${sent}` },
        answered: { $ref: `#/components/schemas/${answered}` },
      });
      // From the very schemas: each kind of message that they know is there.
      for (const [name, schema] of [
        [sent, sentBy],
        [answered, answeredBy],
      ] as const)
        expect(kindsIn(described.components.schemas[name])).toEqual(
          kindsIn(z.toJSONSchema(schema, { io: 'input' })),
        );
      expect(kindsIn(described.components.schemas[answered])).toContain('problem');
    },
  );

  test('says of whole numbers in queries that they are such', () => {
    for (const { name, operation } of operations)
      for (const { name: parameter, schema } of operation.parameters ?? [])
        if (parameter === 'limit')
          expect(schema, name).toMatchObject({ type: 'integer', minimum: 1, maximum: expect.any(Number) });
  });

  test.each<[string, object, object]>([
    ['amperes at a rate', { rateHz: 50, amps: [1, null] }, {}],
    ['milliamperes at times', { t: [0, 0.02], milliamps: [1, null] }, {}],
    ['counts', { rateHz: 50, counts: [1, 2], ampsPerCount: -0.01 }, {}],
    ['a supply at times', { rateHz: 50, amps: [1, 2] }, { supply: { t: [0], volts: [12.5] } }],
    [
      'nulls for what is left out',
      { rateHz: 50, amps: [1, 2] },
      { supply: null, ambientC: null, direction: null },
    ],
    ['no clock', { amps: [1, 2] }, {}],
    ['two clocks', { rateHz: 50, t: [0, 1], amps: [1, 2] }, {}],
    ['no current', { rateHz: 50 }, {}],
    ['two currents', { rateHz: 50, amps: [1, 2], milliamps: [1, 2] }, {}],
    ['counts of nothing', { rateHz: 50, counts: [1, 2] }, {}],
    ['a supply without a clock', { rateHz: 50, amps: [1, 2] }, { supply: { volts: [12.5] } }],
  ])('takes and refuses the same strokes as the service: %s', async (key, side, more) => {
    const fleet = await newFleet(service, await service.signIn());
    const startedAt = '2026-05-02T16:20:11Z';
    const stroke = { key, roomId: fleet.roomId, startedAt, sides: [{ side: 'front', ...side }], ...more };
    const { status } = await send(service, fleet.loggerToken, stroke);
    const content = described.paths['/api/v1/strokes'].post.requestBody?.content ?? {};
    const { success } = z.fromJSONSchema(content['application/json'].schema).safeParse(stroke);
    expect(status).toBe(success ? 200 : 422);
  });

  test('has no reference that leads nowhere', () => {
    const references = [...objectsIn(described)].flatMap((each) =>
      typeof each.$ref === 'string' ? [each.$ref] : [],
    );
    expect(references.length).toBeGreaterThan(20);
    for (const reference of new Set(references)) {
      expect(reference).toMatch(/^#\/components\/schemas\//);
      expect(described.components.schemas).toHaveProperty(reference.replace('#/components/schemas/', ''));
    }
  });

  test('is in the terms of 3.1: no nullable, no exclusiveMinimum that is a flag', () => {
    for (const each of objectsIn(described)) {
      expect(each).not.toHaveProperty('nullable');
      expect(typeof each.exclusiveMinimum).not.toBe('boolean');
    }
  });

  test('says of every operation who may, what it takes and what it answers', () => {
    const schemes = Object.keys(described.components.securitySchemes);
    for (const { name, path, operation } of operations) {
      const placeholders = [...path.matchAll(/\{(\w+)\}/g)].map(([, placeholder]) => placeholder);
      const parameters = operation.parameters?.filter((each) => each.in === 'path') ?? [];
      expect(
        parameters.map((each) => each.name),
        name,
      ).toEqual(placeholders);
      expect(
        parameters.every((each) => each.required),
        name,
      ).toBe(true);
      for (const way of operation.security ?? [])
        for (const scheme of Object.keys(way)) expect(schemes).toContain(scheme);
      const answers = Object.entries(operation.responses);
      // More than one would not say which of them a success is answered with.
      expect(
        answers.filter(([status]) => /^(2|101$)/.test(status)),
        name,
      ).toHaveLength(1);
      for (const [status, answer] of answers) {
        expect(status, name).toMatch(/^[1-5]\d\d$/);
        expect(answer.description, `${name} ${status}`).toMatch(/\S/);
      }
    }
  });

  test('answers problems as problems: 401 wherever one must sign in, 422 wherever a body is taken', () => {
    for (const { name, operation } of operations) {
      const open = operation.security?.length === 0;
      if (!open) expect(operation.responses, name).toHaveProperty('401');
      if (operation.requestBody !== undefined) expect(operation.responses, name).toHaveProperty('422');
      for (const [status, answer] of Object.entries(operation.responses))
        if (status >= '400')
          expect(answer.content, `${name} ${status}`).toEqual({
            'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } },
          });
    }
  });

  test.each<[string, string, { body?: Buffer; headers?: Record<string, string> }]>([
    ['a parameter that is not read', '?nothing=%00', {}],
    [
      'a body in a form that is not taken',
      '',
      { body: Buffer.from('x'), headers: { 'content-type': 'text/plain' } },
    ],
    ['text that cannot be stored', '', { body: Buffer.from('"\\u0000"') }],
    ['a deep nest', '', { body: Buffer.from('['.repeat(100)) }],
    ['more than is taken', '', { body: Buffer.alloc(2 * 1024 * 1024, ' ') }],
    ['a compression', '', { headers: { 'content-encoding': 'br' } }],
  ])('names what %s is answered with, at every address', async (_, query, { body, headers }) => {
    const dealer = await service.newAccount();
    for (const { name, path, method, operation } of operations) {
      // Its own token is needed for the others.
      if (method === 'delete' && path.startsWith('/api/v1/session')) continue;
      const sent = method === 'get' ? undefined : body;
      const json: Record<string, string> = sent === undefined ? {} : { 'content-type': 'application/json' };
      const at = service.url + path.replaceAll(/\{\w+\}/g, crypto.randomUUID()) + query;
      const { status } = await fetch(at, {
        method: method.toUpperCase(),
        headers: { authorization: `Bearer ${dealer.token}`, ...json, ...headers },
        body: sent,
      });
      expect(Object.keys(operation.responses), `${name}: ${status}`).toContain(String(status));
    }
  });

  test('names every problem there is, save those of no operation, and no other', () => {
    const named = new Set(
      [...JSON.stringify(described).matchAll(/\/problems\/([a-z-]+)/g)].map(([, name]) => name),
    );
    const ofNoOperation = ['method-not-allowed', 'headers-too-large', 'expectation-failed'];
    expect([...named, ...ofNoOperation].sort()).toEqual(Object.keys(PROBLEMS).sort());
  });
});

test("the server's README tells every problem as it is", async () => {
  const text = await readFile(new URL('../../../server/README.md', import.meta.url), 'utf8');
  const told = [...text.matchAll(/^\| `([a-z-]+)` +\| (\d{3}) +\| (.+?) +\|$/gm)].map(([, ...row]) => row);
  expect(told).toEqual(
    Object.entries(PROBLEMS).map(([name, { status, title }]) => [name, String(status), title]),
  );
});

test('the type of a problem leads to what it means', async () => {
  for (const [name, { status, title }] of Object.entries(PROBLEMS)) {
    const page = await service.request('GET', `/problems/${name}`);
    expect([page.status, page.text]).toEqual([200, `${status}: ${title}.\n`]);
  }
  expect((await service.request('GET', '/problems/unheard-of')).status).toBe(404);
});
