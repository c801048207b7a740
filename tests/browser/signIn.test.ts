import { expect, test } from 'vitest';
import { describePages } from './support/place.ts';
import { isSignedIn, signIn } from './support/visitor.ts';

/** What is waited for, and how to say that it is there. */
function event(): [happened: Promise<void>, happens: () => void] {
  let happens = () => {};
  const happened = new Promise<void>((resolve) => {
    happens = resolve;
  });
  return [happened, happens];
}

describePages('signing in and out', (place) => {
  test('says what is missing, then that the password is wrong, and keeps the address typed', async () => {
    const { page } = await place.visit('/');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByText('Enter your e-mail address.').waitFor();
    await page.getByText('Enter your password.').waitFor();
    await page.getByLabel('E-mail').fill(place.person.email);
    await page.getByLabel('Password').fill('not the password');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByText('This e-mail or password is wrong.').waitFor();
    expect(await page.getByLabel('E-mail').inputValue()).toBe(place.person.email);
    await page.getByLabel('E-mail').fill('nobody');
    await page.getByLabel('Password').fill('');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByText('Enter a whole address, such as name@example.com.').waitFor();
    expect(await page.getByText('or password is wrong').count()).toBe(0);
  });

  test('asks whoever was signed out for the password alone', async () => {
    const { page } = await place.visitAs(place.person, '/settings');
    await page.context().clearCookies();
    await page.getByLabel('Units').selectOption('Inches and °F');
    await page.getByText('You were signed out.').waitFor();
    expect(await page.getByLabel('E-mail').inputValue()).toBe(place.person.email);
    await signIn(page, place.person);
  });

  test('leaves whoever was signed out where it was, by keyboard too, in a window with its name', async () => {
    const { page, troubles } = await place.visitAs(place.person, '/new-coach');
    await page.getByLabel('Name or stock number').fill('Stock 9');
    await page.context().clearCookies();
    await page.getByRole('button', { name: 'Add a coach' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText('You were signed out.').waitFor();
    expect(await page.title()).toBe('Sign in · Slideload');
    await signIn(page, place.person);
    expect(await page.title()).toBe('Add a coach · Slideload');
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Add a coach');
    expect(await page.getByLabel('Name or stock number').inputValue()).toBe('Stock 9');
    expect(troubles).toEqual([]);
  });

  test('leads to the address that was asked for, by keyboard alone, and out again', async () => {
    const { page, troubles } = await place.visit('/settings/');
    await page.getByLabel('E-mail').focus();
    await page.keyboard.type(place.person.email);
    await page.keyboard.press('Tab');
    await page.keyboard.type(place.person.password);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Settings' }).waitFor();
    await page.getByRole('link', { name: 'Coaches' }).click();
    await page.getByRole('heading', { level: 1, name: 'Coaches' }).waitFor();
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor();
    await page.reload();
    await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor();
    expect(troubles).toEqual([]);
  });

  test('is not asked of whoever comes to an address that leads nowhere', async () => {
    const { page } = await place.visit('/nowhere');
    await page.getByRole('heading', { level: 1, name: 'Nothing here' }).waitFor();
    expect(await page.getByLabel('Password').count()).toBe(0);
    await page.getByRole('link', { name: 'To the coaches' }).click();
    await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor();
  });

  test('is not asked for anew by a refusal that was under way while somebody signed in', async () => {
    const { page } = await place.visit('/');
    await signIn(page, place.person);
    const [held, refuse] = event();
    await page.route(
      /\/api\/v1\/overview/,
      async (route) => {
        await held;
        await route.fulfill({ status: 401, contentType: 'application/problem+json', body: '{"status":401}' });
      },
      { times: 1 },
    );
    await page.context().clearCookies();
    await page.reload();
    await signIn(page, place.person);
    const late = page.waitForResponse((response) => response.status() === 401);
    refuse();
    await late;
    await page.getByRole('heading', { name: 'No coach yet' }).waitFor();
    expect(await page.getByLabel('Password').count()).toBe(0);
  });

  test('shows whoever signs in next nothing that was under way for the one before', async () => {
    const before = await place.service().newAccount();
    const next = await place.service().newAccount();
    await place.service().as(before.token, 'POST', '/people', {
      email: 'ines@example.com',
      name: 'Ines',
      role: 'owner',
    });
    const { page } = await place.visit('/people');
    const [answered, noteAnswered] = event();
    const [released, release] = event();
    const list = /\/api\/v1\/people\b/;
    await page.route(list, async (route) => {
      const response = await route.fetch();
      if (response.ok()) {
        noteAnswered();
        await released;
      }
      await route.fulfill({ response });
    });
    await signIn(page, before);
    await answered;
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor();
    const late = page.waitForResponse((response) => list.test(response.url()) && response.ok());
    release();
    expect(await (await late).text()).toContain('Ines');
    await page.unroute(list);
    // Whatever is shown is not what the service answers.
    await page.route(list, () => {});
    await signIn(page, next);
    const asked = page.waitForRequest(list);
    await page.getByRole('link', { name: 'People' }).click();
    await asked;
    await page.getByRole('heading', { level: 1, name: 'People' }).waitFor();
    expect(await page.getByText('Ines').count()).toBe(0);
  });

  test('is asked in every tab once somebody signed out in one, and in none once it signed in again', async () => {
    const person = await place.service().newAccount();
    const { page: one } = await place.visit('/people');
    await signIn(one, person);
    const other = await one.context().newPage();
    await other.goto(new URL('/settings', one.url()).href);
    await isSignedIn(other);
    await one.getByRole('button', { name: 'Sign out' }).click();
    await other.getByRole('heading', { level: 1, name: 'Sign in' }).waitFor();
    expect(await other.getByRole('heading', { level: 1, name: 'Settings' }).isVisible()).toBe(false);

    await signIn(one, person);
    await other.getByRole('heading', { level: 1, name: 'Settings' }).waitFor();
    await isSignedIn(other);
    expect(await other.getByLabel('Password').count()).toBe(0);
  });

  test('an empty installation says how the first coach comes to be', async () => {
    const { page } = await place.visit('/');
    await signIn(page, place.person);
    await page.getByRole('heading', { name: 'No coach yet' }).waitFor();
  });

  test('after too many wrong passwords it says to wait', async () => {
    const { page } = await place.visit('/');
    await page.getByLabel('E-mail').fill('nobody@example.com');
    await page.getByLabel('Password').fill('wrong again and again');
    const button = page.getByRole('button', { name: 'Sign in' });
    const said = page.getByRole('main').getByRole('alert');
    for (let attempt = 0; attempt < 10; attempt++) {
      const answered = page.waitForResponse(
        (r) => r.url().endsWith('/session') && r.request().method() === 'POST',
      );
      await button.click();
      await answered;
    }
    await button.click();
    await said.getByText(/Too many attempts/).waitFor();
  });
});
