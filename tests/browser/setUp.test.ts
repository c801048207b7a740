import { expect, test } from 'vitest';
import { describePages } from './support/place.ts';
import { signIn } from './support/visitor.ts';

const TOKEN = 'a-token-for-setting-up';
const NEW_PERSON = { email: 'ilse@example.com', password: 'twelve or more of them' };

describePages(
  'setting up',
  (place) => {
    test('without its key the link is said to be incomplete', async () => {
      const { page } = await place.visit('/set-up');
      await page.getByText('lacks its key').waitFor();
    });

    test('makes the first account once, and never tells its key to anybody by an address', async () => {
      const { page, troubles } = await place.visit(`/set-up#${TOKEN}`);
      const asked: string[] = [];
      page.on('request', (request) => asked.push(request.url()));
      await page.getByRole('button', { name: 'Make the account' }).click();
      await page.getByText('The password needs at least 12 characters.').waitFor();
      expect(await page.evaluate('document.activeElement.name')).toBe('name');
      await page.getByLabel('Your name').fill('Ilse');
      await page.getByLabel('E-mail').fill(NEW_PERSON.email);
      await page.getByLabel('Password').fill(NEW_PERSON.password);
      await page.getByRole('button', { name: 'Make the account' }).click();
      await page.getByRole('heading', { level: 1, name: 'Coaches' }).waitFor();
      expect(asked.filter((url) => url.includes(TOKEN))).toEqual([]);
      expect(troubles).toEqual([]);

      const second = await place.visit(`/set-up#${TOKEN}`);
      await second.page.getByLabel('Your name').fill('Somebody else');
      await second.page.getByLabel('E-mail').fill('else@example.com');
      await second.page.getByLabel('Password').fill(NEW_PERSON.password);
      await second.page.getByRole('button', { name: 'Make the account' }).click();
      await second.page.getByRole('main').getByRole('alert').getByRole('paragraph').waitFor();
      await second.page.goto('/');
      await signIn(second.page, NEW_PERSON);
    });
  },
  { firstPerson: false, setUpToken: TOKEN },
);
