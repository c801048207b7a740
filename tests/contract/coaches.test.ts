import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Member, startService, type TestService } from '../support/service.ts';

let service: TestService;
let token: string;
let stranger: Member;

beforeAll(async () => {
  service = await startService();
  [token, stranger] = await Promise.all([service.signIn(), service.newAccount()]);
});
afterAll(() => service?.stop());

describe('a coach', () => {
  test('is created whole, with an id of version 7 and an address', async () => {
    const body = { name: 'Fern', model: 'Hallmoor 310', year: 2021, notes: 'On consignment.' };
    const made = await service.request('POST', '/coaches', { token, body });
    expect(made.text).toContain('Fern');
    expect(made.status).toBe(201);
    expect(made.body).toMatchObject(body);
  });
});
