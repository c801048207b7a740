import type { Pool } from 'pg';
import { attend, type Finding, good } from './finding.ts';

/** What waits longer than this to be sent is held up rather than slow. */
const LONG_HOURS = 1;

interface Counted {
  readonly paused: number;
  readonly late: number;
  readonly webhooks: number;
}

/** Mailboxes that were refused, mails that nobody takes, webhooks that do not answer. */
export async function examineTelling(pool: Pool): Promise<Finding[]> {
  const { rows } = await pool.query<Counted>(
    `select
      (select count(*)::integer from people where mail_paused_at is not null) as paused,
      (select count(*)::integer from mail_notices where state = 'waiting' and attempts > 0
        and made_at < now() - make_interval(hours => $1)) as late,
      (select count(*)::integer from webhooks where disabled_because is not null or failures > 0) as webhooks`,
    [LONG_HOURS],
  );
  const [{ paused, late, webhooks }] = rows;
  const found: Finding[] = [];
  if (late > 0)
    found.push(
      attend(
        `${late} mails have waited for ${LONG_HOURS} hour: the mail server does not take them.`,
        'Check SMTP_URL and MAIL_FROM, and the log of the mail server.',
      ),
    );
  if (paused > 0)
    found.push(
      attend(
        `Mail to ${paused} people is paused: their mailboxes were refused for good.`,
        'Tell them in another way; they go on from the page that says what they are told.',
      ),
    );
  if (webhooks > 0)
    found.push(
      attend(`${webhooks} webhooks do not answer well, or were switched off.`, 'Their dealers see which.'),
    );
  return found.length === 0 ? [good('Whatever was to be told was taken.')] : found;
}
