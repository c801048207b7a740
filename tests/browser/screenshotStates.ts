import type { Page } from 'playwright-core';
import type { Api } from './support/api.ts';
import { addCoach, addRoom, HOSTILE_NAME, sendDays } from './support/fleet.ts';
import { keptOnDevice } from './support/owner.ts';

/** The states beside a page's own, for the pictures of `screenshots.ts`: nothing there yet, little, much too long, gone. */
export async function pagesOfStates(api: Api): Promise<Record<string, string>> {
  const empty = await addCoach(api, 'Juniper 31');
  const few = await addCoach(api, 'Juniper 32');
  const noStroke = await addRoom(api, few, 'Study');
  const twoStrokes = await addRoom(api, few, 'Lounge');
  const sides = [
    { side: 'front', runningAmps: 8.5 },
    { side: 'rear', runningAmps: 8.2 },
  ];
  const strokes = await sendDays(api, few, twoStrokes, () => sides, 1);
  const long = await addCoach(api, HOSTILE_NAME);
  const longRoom = await addRoom(api, long, HOSTILE_NAME);
  return {
    'state-no-room': `/coaches/${empty.id}`,
    'state-no-stroke': `/rooms/${noStroke.id}`,
    'state-two-strokes': `/rooms/${twoStrokes.id}`,
    'state-first-stroke': `/strokes/${strokes[0]}`,
    'state-no-work': `/rooms/${twoStrokes.id}/compare`,
    'state-work-deleted': `/rooms/${twoStrokes.id}/compare?service=${noStroke.id}`,
    'state-long-name': `/coaches/${long.id}`,
    'state-long-name-room': `/rooms/${longRoom.id}`,
    'state-nowhere': '/nowhere',
  };
}

/** The states that a page is in while the service is slow, in trouble or out of reach. */
export async function shootTroubles(
  page: Page,
  path: string,
  shoot: (what: string) => Promise<void>,
): Promise<void> {
  await page.goto(path, { waitUntil: 'networkidle' });
  await keptOnDevice(page);
  // Asked once more, so that the device keeps the answers, too.
  await page.reload({ waitUntil: 'networkidle' });
  await page.context().setOffline(true);
  await page.reload();
  await page.getByText('No network').first().waitFor();
  await shoot('state-offline');
  await page.context().setOffline(false);

  const trends = '**/api/v1/rooms/*/trend**';
  await page.route(trends, () => {});
  // A course that the device has not kept: one that it has is shown instead.
  await page.goto(`${path}?measure=durationS`);
  await page.getByText('Loading').first().waitFor();
  await shoot('state-loading');
  await page.unroute(trends);

  await page.route(trends, (route) => route.fulfill({ status: 503 }));
  await page.goto(`${path}?failing`);
  // What the device has kept is shown with a word that it is from before.
  await page.getByRole('alert').or(page.getByText('What you see is from before')).first().waitFor();
  await shoot('state-error');
  await page.unroute(trends);
}
