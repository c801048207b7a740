import { afterAll, beforeAll } from 'vitest';
import { onceMade } from './onceMade.ts';
import { type ServiceOptions, startService, type TestService } from './service.ts';

/** The service that the tests of a file stand on: it begins before the first of them and stops after the last. */
export function serviceOfTests(options: ServiceOptions = {}): TestService {
  let service: TestService | undefined;
  beforeAll(async () => {
    service = await startService(options);
  });
  afterAll(() => service?.stop());
  return onceMade(() => service);
}

/** The service's first person, signed in before the first test of a file: for whoever needs no fleet of its own. */
export function dealerOfTests(service: TestService): { readonly token: string } {
  let dealer: { readonly token: string } | undefined;
  beforeAll(async () => {
    dealer = { token: await service.signIn() };
  });
  return onceMade(() => dealer);
}
