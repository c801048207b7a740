import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type Mail, type Mailer, smtpMailer } from '../../../server/mail/mailer.ts';
import { startMailServer, type TestMailServer } from '../../support/mailServer.ts';
import { type Member, startService, type TestService } from '../../support/service.ts';

/** The application's own mailer, and what it was given; resolves the next one that is waited for. */
class Post implements Mailer {
  readonly reachesMailboxes = true;
  readonly mails: Mail[] = [];
  readonly #through: Mailer;
  #waiting: (() => void)[] = [];

  constructor(through: Mailer) {
    this.#through = through;
  }

  async send(mail: Mail): Promise<void> {
    await this.#through.send(mail);
    this.mails.push(mail);
    for (const wake of this.#waiting.splice(0)) wake();
  }

  close(): void {
    this.#through.close();
  }

  async untilSent(count: number): Promise<void> {
    while (this.mails.length < count) await new Promise<void>((resolve) => this.#waiting.push(resolve));
  }

  /** The next mail to somebody after so many to all: others may be on their way still. */
  async nextTo(email: string, after: number): Promise<Mail> {
    for (let count = after + 1; ; count++) {
      await this.untilSent(count);
      const mail = this.mails[count - 1];
      if (mail.to === email) return mail;
    }
  }
}

let mailServer: TestMailServer;
let post: Post;
let service: TestService;
let member: Member;

beforeAll(async () => {
  mailServer = await startMailServer();
  post = new Post(smtpMailer(mailServer.url, 'Slideload <rooms@example.com>'));
  service = await startService({ worker: false, mailer: post, publicUrl: 'https://rooms.example.com' });
});
afterAll(async () => {
  await service?.stop();
  post?.close();
  await mailServer?.stop();
});
beforeEach(async () => {
  member = await service.newAccount();
});

const PASSWORD = 'nine blue garden chairs';
const ask = (email: string, headers = {}) =>
  service.request('POST', '/password-resets', { body: { email }, headers });
const reset = (token: string, password = PASSWORD) =>
  service.request('POST', `/password-resets/${token}`, { body: { password } });

async function linkFor(email: string): Promise<string> {
  const before = post.mails.length;
  const { status, body } = await ask(email);
  expect([status, body]).toEqual([202, { status: 'accepted', mails: true }]);
  const { text } = await post.nextTo(email, before);
  return /https:\/\/rooms\.example\.com\/reset#(\S+)/.exec(text)?.[1] ?? '';
}

describe('a forgotten password', () => {
  test('is set anew by a mailed link, once; every other way in ends', async () => {
    const script = await service.as(member.token, 'POST', '/tokens', {
      name: 'Nightly',
      until: new Date(Date.now() + 86_400_000).toISOString(),
    });
    const link = await linkFor(member.email);
    const isOpen = async () => (await service.request('GET', `/password-resets/${link}`)).status;
    expect(await isOpen()).toBe(204);
    expect(mailServer.received.at(-1)).toContain(`reset#${link.slice(0, 20)}`);
    const answer = await reset(link);
    expect([answer.status, answer.body.person.id]).toEqual([200, member.person.id]);
    expect(await isOpen()).toBe(404);
    expect((await reset(link, 'ten green garden chairs')).status).toBe(404);
    for (const token of [member.token, script.body.token])
      expect((await service.as(token, 'GET', '/coaches')).status).toBe(401);
    expect(await service.signIn(member.email, PASSWORD)).toMatch(/^slp_/);
    const old = { email: member.email, password: member.password };
    expect((await service.request('POST', '/session', { body: old })).status).toBe(401);
  });

  test('also for one whom wrong passwords have shut out', async () => {
    const wrong = { email: member.email, password: 'not this one, surely' };
    for (let tried = 0; tried < 10; tried++) await service.request('POST', '/session', { body: wrong });
    expect((await service.request('POST', '/session', { body: wrong })).status).toBe(429);
    expect((await reset(await linkFor(member.email))).status).toBe(200);
    expect(await service.signIn(member.email, PASSWORD)).toMatch(/^slp_/);
  });

  test('a link is good for an hour', async () => {
    const link = await linkFor(member.email);
    await service.pool.query("update password_resets set expires_at = expires_at - interval '60 minutes'");
    expect((await reset(link)).status).toBe(404);
    await service.pool.query("update password_resets set expires_at = expires_at + interval '1 minute'");
    expect((await reset(link)).status).toBe(200);
  });

  test('an address that nobody has is answered alike, and nothing is sent', async () => {
    const [known, unknown] = [await ask(member.email), await ask('nobody@example.com')];
    expect([unknown.status, unknown.body]).toEqual([known.status, known.body]);
    // The next message shows that the one before it in the queue was none.
    const other = await service.newAccount();
    await linkFor(other.email);
    expect(post.mails.map(({ to }) => to)).not.toContain('nobody@example.com');
  });

  test('nobody can fill a mailbox', async () => {
    for (let n = 0; n < 8; n++) expect((await ask(member.email)).status).toBe(202);
    await linkFor((await service.newAccount()).email);
    expect(post.mails.filter(({ to }) => to === member.email).length).toBeLessThanOrEqual(3);
  });

  test('the link leads to the service’s own address, whatever the request says', async () => {
    const before = post.mails.length;
    await ask(member.email, { 'x-forwarded-host': 'evil.example.com' });
    await post.untilSent(before + 1);
    expect(post.mails[before].text).not.toContain('evil');
  });

  test('tokens of other kinds set nothing', async () => {
    const { invitation } = (
      await service.as(member.token, 'POST', '/people', {
        email: `new-${member.email}`,
        name: 'Ines',
        role: 'owner',
      })
    ).body;
    for (const token of [member.token, invitation, 'slr_', `slr_${'A'.repeat(64)}`, '%00'])
      expect([token, (await reset(token)).status]).toEqual([token, 404]);
  });
});

describe('a password that many use', () => {
  test.each(['1qaz2wsx3edc', 'passwordpassword', '123456789012', 'x'.repeat(200)])(
    '%s is taken wherever one is set, as 12 to 200 characters is all that is asked',
    async (password) => {
      const somebody = await service.newAccount();
      const answers = [
        await service.as(somebody.token, 'PUT', '/password', {
          oldPassword: somebody.password,
          newPassword: password,
        }),
        await service.request('POST', `/invitations/${await invited()}`, { body: { password } }),
        await reset(await linkFor(somebody.email), password),
        await service.request('POST', '/session', { body: { email: somebody.email, password } }),
      ];
      expect(answers.map(({ status }) => status)).toEqual([204, 200, 200, 200]);
    },
  );

  test('so is the own address', async () => {
    const body = { oldPassword: member.password, newPassword: member.email };
    expect((await service.as(member.token, 'PUT', '/password', body)).status).toBe(204);
  });

  async function invited(): Promise<string> {
    const body = { email: `${crypto.randomUUID()}@example.com`, name: 'Ines', role: 'owner' };
    return (await service.as(member.token, 'POST', '/people', body)).body.invitation;
  }
});
