import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { newToken } from '../../../server/access/tokens/tokens.ts';
import type { Member } from '../../support/service.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { newFleet, strokeBody } from '../strokes/strokeFixture.ts';

const service = serviceOfTests({ worker: false });
let member: Member;
let stranger: Member;
let roomId: string;
/** Good ones of every kind that a request may carry. */
let tokens: Readonly<Record<'person' | 'logger' | 'script', string>>;

beforeAll(async () => {
  member = await service.newAccount();
  stranger = await service.newAccount();
  const fleet = await newFleet(service, member.token);
  roomId = fleet.roomId;
  const body = { name: 'Nightly', until: new Date(Date.now() + 86_400_000).toISOString(), mayChange: true };
  const made = await service.as(member.token, 'POST', '/tokens', body);
  tokens = { person: member.token, logger: fleet.loggerToken, script: made.body.token };
});

const PREFIX_LENGTH = 'slp_'.length;
const CHARACTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Ways to make another text of a token, none of which is one that was handed out. */
const FORGERIES: Readonly<Record<string, fc.Arbitrary<(token: string) => string>>> = {
  'with another character': fc
    .tuple(fc.nat(), fc.integer({ min: 1, max: CHARACTERS.length - 1 }))
    .map(([place, step]) => (token) => {
      const at = PREFIX_LENGTH + (place % (token.length - PREFIX_LENGTH));
      const other = CHARACTERS[(CHARACTERS.indexOf(token[at]) + step) % CHARACTERS.length];
      return token.slice(0, at) + other + token.slice(at + 1);
    }),
  'cut short': fc.nat().map((cut) => (token) => token.slice(0, cut % token.length)),
  'made longer': fc
    .string({ unit: fc.constantFrom(...CHARACTERS), minLength: 1, maxLength: 200 })
    .map((more) => (token) => token + more),
  'in capitals': fc.constant((token) => token.toUpperCase()),
  'of another account': fc.constant((token) => {
    const own = Buffer.from(token.slice(PREFIX_LENGTH), 'base64url');
    const other = Buffer.from(stranger.token.slice(PREFIX_LENGTH), 'base64url');
    const bytes = Buffer.concat([other.subarray(0, 16), own.subarray(16)]);
    return token.slice(0, PREFIX_LENGTH) + bytes.toString('base64url');
  }),
  'made up': fc.constant((token) =>
    newToken('person', member.person.accountId).text.replace(/^..../, token.slice(0, 4)),
  ),
};

const read = (token: string) =>
  service.request('GET', '/coaches', { headers: { authorization: `Bearer ${token}` } });
const send = (token: string) =>
  service.request('POST', '/strokes', {
    headers: { authorization: `Bearer ${token}` },
    body: strokeBody(roomId, 1),
  });

test('good ones open what they are for', async () => {
  expect((await read(tokens.person)).status).toBe(200);
  expect((await read(tokens.script)).status).toBe(200);
  expect((await send(tokens.logger)).status).toBe(200);
});

describe.each(['person', 'logger', 'script'] as const)("a %s's token", (kind) => {
  test.each(Object.keys(FORGERIES))('%s is answered as none at all', async (name) => {
    const nothing = await service.request('GET', '/coaches');
    await fc.assert(
      fc.asyncProperty(FORGERIES[name], async (forge) => {
        const forged = forge(tokens[kind]);
        const route = kind === 'logger' ? send : read;
        const answer = await route(forged);
        expect([answer.status, answer.body, answer.headers.get('www-authenticate')]).toEqual([
          401,
          nothing.body,
          nothing.headers.get('www-authenticate'),
        ]);
      }),
      { numRuns: 8 },
    );
  });

  test('by the name of another kind is none of it', async () => {
    for (const prefix of ['slp_', 'sll_', 'sli_', 'slk_', 'slr_']) {
      const renamed = prefix + tokens[kind].slice(PREFIX_LENGTH);
      if (renamed === tokens[kind]) continue;
      expect([(await read(renamed)).status, (await send(renamed)).status], prefix).toEqual([401, 401]);
    }
  });
});

test("a cursor of another account's list goes on in one's own and shows nothing of theirs", async () => {
  for (const name of ['Aster', 'Briar', 'Clover'])
    await service.as(stranger.token, 'POST', '/coaches', { name });
  const theirs = await service.as(stranger.token, 'GET', '/coaches?limit=1');
  const answer = await service.as(member.token, 'GET', `/coaches?cursor=${theirs.body.next}`);
  expect(answer.status).toBe(200);
  expect(answer.text).not.toMatch(/Aster|Briar|Clover/);
});
