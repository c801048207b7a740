import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startTelling } from '../../server/notices/startTelling.ts';
import { unsubscribeToken } from '../../server/notices/unsubscribe.ts';
import { startReceiver, type WebhookReceiver } from '../support/webhookReceiver.ts';
import { violationsOn } from './support/accessibility.ts';
import { type Api, ask } from './support/api.ts';
import { NARROW } from './support/devices.ts';
import { describePages } from './support/place.ts';

interface Kept {
  readonly warningsFrom: string | null;
  readonly quiet: object | null;
  readonly digest: boolean;
  readonly silentAfterDays: number | null;
}

const settingsOf = (api: Api) => ask<Kept>(api, 'GET', '/settings/notices');
const isWide = (page: Page) =>
  page.evaluate('document.documentElement.scrollWidth > document.documentElement.clientWidth');

describePages(
  'what people are told',
  (place) => {
    let receiver: WebhookReceiver;
    beforeAll(async () => {
      receiver = await startReceiver();
    });
    afterAll(() => receiver?.stop());

    test('is chosen by each person, on a phone, and kept choice by choice', async () => {
      const { page, troubles } = await place.visitAs(place.person, '/settings', NARROW);
      await page.getByRole('link', { name: 'Notices' }).click();
      await page.getByText('There is no mail server here yet, so nothing is mailed.').waitFor();
      expect(await page.getByText('Mail goes to').count()).toBe(0);
      await page.getByLabel('Warnings by mail').selectOption({ label: 'From “Needs work” on' });
      await page.getByText('Saved.').waitFor();
      await page.getByLabel('Loggers silent for').fill('7');
      await page.getByLabel('From', { exact: true }).fill('22:00');
      await page.getByLabel('Loggers silent for').focus();
      await page.getByText('Enter both: nothing is saved before.').waitFor();
      expect(await page.getByText('Saved.').count()).toBe(0);
      await page.getByLabel('To', { exact: true }).fill('07:00');
      await page.getByLabel('To', { exact: true }).blur();
      await page.getByRole('button', { name: 'No quiet hours' }).waitFor();
      await page.getByLabel('The week on Monday').check();
      const api = await place.api();
      await expect
        .poll(() => settingsOf(api))
        .toMatchObject({
          warningsFrom: 'service',
          silentAfterDays: 7,
          quiet: { from: '22:00', to: '07:00' },
          digest: true,
        });
      expect(await isWide(page)).toBe(false);
      expect(await violationsOn(page)).toEqual([]);
      await page.getByLabel('Loggers silent for').fill('a');
      await page.getByText('Enter whole days from 1 to 365, or leave it empty.').waitFor();
      await page.getByRole('button', { name: 'No quiet hours' }).click();
      await expect.poll(async () => (await settingsOf(api)).quiet).toBeNull();
      expect(troubles).toEqual([]);
    });

    test('stands still when the mailbox was refused, which is said, until its owner goes on', async () => {
      await place
        .service()
        .pool.query(
          "update people set mail_paused_at = now(), mail_paused_because = 'The mail server refused it.' where email = $1",
          [place.person.email],
        );
      const { page } = await place.visitAs(place.person, '/notices');
      await page.getByText('The mail server refused it.').waitFor();
      expect(await violationsOn(page)).toEqual([]);
      await page.getByRole('button', { name: 'Mail me again' }).click();
      await page.getByText('The mail server refused it.').waitFor({ state: 'detached' });
    });

    test('a dealer makes a webhook, tests it, reads what came of that, and removes it', async () => {
      const { app } = place.service();
      const telling = startTelling({
        pool: app.database.pool,
        mailer: app.mailer,
        publicUrl: () => '',
        webhooksToPrivate: true,
        log: app.log,
        count: () => undefined,
      });
      const { page, troubles } = await place.visitAs(place.person, '/notices', NARROW);
      await page.getByText('There are none.').waitFor();
      await page.getByText('Add a webhook').first().click();
      await page.getByRole('button', { name: 'Add a webhook' }).click();
      await page.getByText('Enter an address.').waitFor();
      await page.getByLabel('Address').fill(receiver.url);
      await page.getByRole('checkbox', { name: 'A warning has cleared', exact: true }).uncheck();
      expect(await violationsOn(page)).toEqual([]);
      await page.getByRole('button', { name: 'Add a webhook' }).click();
      const secret = page.getByRole('textbox', { name: 'The secret of its signatures' });
      await secret.waitFor();
      expect(await secret.inputValue()).toMatch(/^whsec_/);
      await page.getByRole('button', { name: 'I have kept it' }).click();
      await page.getByText(`More on ${receiver.url}`).click();
      await page.getByRole('button', { name: 'Send a test' }).click();
      await page.getByRole('cell', { name: 'delivered' }).waitFor();
      expect(receiver.received).toHaveLength(1);
      expect(await isWide(page)).toBe(false);
      expect(await violationsOn(page)).toEqual([]);
      await page.getByRole('button', { name: 'Switch off' }).click();
      await page.getByText('switched off').waitFor();
      await page.getByLabel(`To delete, type the name: ${receiver.url}`).fill(receiver.url);
      await page.getByRole('button', { name: 'Delete', exact: true }).click();
      await page.getByText('There are none.').waitFor();
      expect(troubles).toEqual([]);
      await telling.stop();
    });

    test('ends by the link in a message, for somebody who is not signed in', async () => {
      const { db } = place.service();
      await db.updateTable('people').set({ notices_from: 'watch' }).execute();
      const reader = await db
        .selectFrom('people')
        .select(['account_id', 'id', 'unsubscribe_key'])
        .where('email', '=', place.person.email)
        .executeTakeFirstOrThrow();
      const { page, troubles } = await place.visit(`/unsubscribe/${unsubscribeToken(reader)}`, NARROW);
      await page.getByRole('button', { name: 'Stop it' }).waitFor();
      expect((await settingsOf(await place.api())).warningsFrom).toBe('watch');
      expect(await violationsOn(page)).toEqual([]);
      await page.getByRole('button', { name: 'Stop it' }).click();
      await page.getByText('Stopped.').waitFor();
      expect((await settingsOf(await place.api())).warningsFrom).toBeNull();
      await page.goto('/unsubscribe/nobody');
      await page.getByRole('button', { name: 'Stop it' }).click();
      await page.getByText('This link is not known here.').waitFor();
      expect(troubles.filter((trouble) => !trouble.includes('404'))).toEqual([]);
    });
  },
  { worker: false, webhooksToPrivate: true },
);
