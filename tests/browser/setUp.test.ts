import { expect, test } from 'vitest';
import { violationsOn } from './support/accessibility.ts';
import { describePages } from './support/place.ts';
import { signIn } from './support/visitor.ts';

const TOKEN = 'a-token-for-setting-up';
const NEW_PERSON = { email: 'ilse@example.com', password: 'QWERTY123456 and more' };

describePages(
  'setting up',
  (place) => {
    test('without its key the link is said to be incomplete', async () => {
      const { page } = await place.visit('/set-up');
      await page.getByText('is not complete').waitFor();
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
      const password = page.getByLabel('Password');
      const advice = page.getByRole('main').getByRole('status');
      await password.fill('PasswordPassword');
      await advice.getByText('Many people use this password').waitFor();
      expect(await violationsOn(page)).toEqual([]);
      await password.fill(NEW_PERSON.email.toUpperCase());
      await advice.getByText('This is your address').waitFor();
      await password.fill(NEW_PERSON.password);
      await advice.getByRole('paragraph').waitFor({ state: 'detached' });
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
