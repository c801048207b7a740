import { afterAll, afterEach, beforeAll, describe } from 'vitest';
import { FIRST_PERSON, type ServiceOptions, startService, type TestService } from '../../support/service.ts';
import { type Api, apiOf } from './api.ts';
import { CHROMIUM_PATH, chromiumOfProcess, hasChromium } from './chromium.ts';
import { Devices, type Visit } from './devices.ts';
import { isSignedIn, type Person, signedInAs, type Visitor, visit } from './visitor.ts';

/** What a test of the pages stands on: a service of its own, a person in it, and a browser. */
export interface Place {
  readonly person: Person;
  readonly api: () => Promise<Api>;
  /** The service itself, for what no page and no request can bring about. */
  readonly service: () => TestService;
  readonly visit: (path: string, options?: Visit) => Promise<Visitor>;
  /** Visits as somebody who signed in before, which is quicker than by the form. */
  readonly visitAs: (person: Person, path: string, options?: Visit) => Promise<Visitor>;
}

/** Describes tests that need a browser and a service of their own. Without Chromium they are skipped by name. */
export function describePages(
  name: string,
  tests: (place: Place) => void,
  options: ServiceOptions = {},
): void {
  const title = hasChromium ? name : `${name} (skipped: no Chromium at ${CHROMIUM_PATH})`;
  describe.skipIf(!hasChromium)(title, () => {
    let service: TestService;
    let devices: Devices;
    let visitors: Visitor[] = [];

    beforeAll(async () => {
      const [started, browser] = await Promise.all([startService(options), chromiumOfProcess()]);
      service = started;
      devices = new Devices(browser, service.url);
    });
    afterEach(async () => {
      await Promise.all(visitors.map((visitor) => visitor.leave()));
      visitors = [];
    });
    afterAll(async () => {
      await devices?.close();
      await service?.stop();
    });

    const apiOfPerson = ({ email, password }: Person) => apiOf(service.url, email, password);
    const visitPage: Place['visit'] = async (path, options) => {
      const visitor = await visit(devices, options);
      visitors.push(visitor);
      await visitor.page.goto(path);
      return visitor;
    };

    tests({
      person: FIRST_PERSON,
      service: () => service,
      api: () => apiOfPerson(FIRST_PERSON),
      visit: visitPage,
      visitAs: async (person, path, options) => {
        const visitor = await visitPage(path, { ...options, ...signedInAs(await apiOfPerson(person)) });
        await isSignedIn(visitor.page);
        return visitor;
      },
    });
  });
}
