import { beforeAll, expect, test } from 'vitest';
import { violationsOn } from './support/accessibility.ts';
import { addCoach, addRoom, allAnalysed, sendDays } from './support/fleet.ts';
import { addOwner } from './support/owner.ts';
import { describePages } from './support/place.ts';

describePages('what somebody may not do', (place) => {
  let strokeId: string;
  let roomId: string;
  beforeAll(async () => {
    const api = await place.api();
    const coach = await addCoach(api, 'Juniper 31');
    const room = await addRoom(api, coach, 'Bedroom');
    roomId = room.id;
    [strokeId] = await sendDays(api, coach, room, () => [{ side: 'front', runningAmps: 8.5 }], 1);
    await allAnalysed(api, room);
  });

  test('is not offered to an owner on the page of a stroke', async () => {
    const dealer = await place.visitAs(place.person, `/strokes/${strokeId}`);
    await dealer.page.getByRole('button', { name: 'Set this stroke aside' }).waitFor();
    const { page, troubles } = await place.visitAs(await addOwner(place), `/strokes/${strokeId}`);
    await page.getByRole('link', { name: 'Juniper 31' }).waitFor();
    await page.getByRole('heading', { name: 'Measures' }).waitFor();
    expect(await page.getByRole('button', { name: 'Set this stroke aside' }).count()).toBe(0);
    expect(troubles).toEqual([]);
  });

  test('is not offered to an owner where recordings are added', async () => {
    const { page } = await place.visitAs(await addOwner(place), `/rooms/${roomId}/upload`);
    await page.getByText('Recordings are added by dealers and technicians.').waitFor();
    expect(await page.getByText('Choose a file').count()).toBe(0);
  });

  test.each(['/people', '/record', '/kept'])('is not offered at %s to whoever is no dealer', async (path) => {
    const { page, troubles } = await place.visitAs(await addOwner(place), path);
    await page.getByText('This page is for dealers, and you are signed in as Owner.').waitFor();
    expect(await page.getByText('Invite a person').count()).toBe(0);
    expect(await page.getByText('There is nothing here that you may see.').count()).toBe(0);
    expect(await violationsOn(page)).toEqual([]);
    expect(troubles).toEqual([]);
  });
});
